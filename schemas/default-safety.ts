/** The standing safety text of a manual that has none of its own: the usual cautions, and who decides. */
export const defaultSafety = `Only people who are trained on this machine and allowed to work on it may do this work.
Local law, local codes and the rules of the workplace come first; where they ask for a licence, only a licensed person may do the work.
Stop the machine, secure it and lock its energy out before you reach into it. Wear the protective equipment that the task asks for.
If a step is not clear, or the machine is not as the sheet says, stop and ask.
`;
