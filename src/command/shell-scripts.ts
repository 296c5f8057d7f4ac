/** Shells that words can be completed in. */
export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

/**
 * What a shell runs when Tab is pressed. Each script asks the command itself what may stand next, so that it
 * never falls behind: a line is a word, a tab and what it is for, or `:folders` or `:files`.
 */
export const shellScripts: Readonly<Record<Shell, string>> = {
  bash: String.raw`# Completes the words of tallybolt in bash.
_tallybolt_next() {
  local IFS=$'\n' typed=${'$'}{COMP_WORDS[COMP_CWORD]} line
  [[ $typed == = ]] && typed=
  COMPREPLY=()
  while IFS= read -r line; do
    case $line in
      :folders) compopt -o filenames 2>/dev/null; COMPREPLY+=($(compgen -d -- "$typed")) ;;
      :files) compopt -o filenames 2>/dev/null; COMPREPLY+=($(compgen -f -- "$typed")) ;;
      *) COMPREPLY+=("${'$'}{line%%$'\t'*}") ;;
    esac
  done < <("${'$'}{COMP_WORDS[0]}" shell-next -- "${'$'}{COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -F _tallybolt_next tallybolt
`,
  zsh: String.raw`#compdef tallybolt
# Completes the words of tallybolt in zsh.
_tallybolt() {
  local line
  local -a found
  for line in "${'$'}{(@f)$("${'$'}{(Q)words[1]}" shell-next -- "${'$'}{(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
    case $line in
      '') ;;
      :folders) _files -/ ;;
      :files) _files ;;
      *) found+=("${'$'}{${'$'}{line%%$'\t'*}//:/\\:}:${'$'}{line#*$'\t'}") ;;
    esac
  done
  (( ${'$'}#found )) && _describe 'tallybolt' found
}
if [[ ${'$'}{funcstack[1]} == _tallybolt ]]; then
  _tallybolt "$@"
else
  compdef _tallybolt tallybolt
fi
`,
  fish: `# Completes the words of tallybolt in fish.
function __tallybolt_next
    set -l words (commandline -opc)
    set -l typed (commandline -ct)
    for line in (command $words[1] shell-next -- $words[2..-1] "$typed" 2>/dev/null)
        switch $line
            case :folders
                __fish_complete_directories "$typed"
            case :files
                __fish_complete_path "$typed"
            case '*'
                echo $line
        end
    end
end
complete -c tallybolt -f -a '(__tallybolt_next)'
`,
};
