/** `figures/drive.svg`: what the call-outs of a figure point at. An SVG needs a viewBox for that. */
export const drivePicture = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400">
  <title>Drive of the mixer from its left side</title>
  <g fill="#fff" stroke="#000" stroke-width="2" stroke-linejoin="round">
    <path d="M40 290H560V314H40Z" fill="#ddd"/>
    <path d="M70 170H220V280H70Z"/>
    <path d="M80 170V280M95 170V280M110 170V280M125 170V280" stroke-width="1"/>
    <path d="M82 280H98V300H82ZM192 280H208V300H192Z" fill="#bbb"/>
    <path d="M340 160H500V290H340Z"/>
    <path d="M392 148H408V172H392Z" fill="#bbb"/>
    <path d="M420 280H440V300H420Z" fill="#bbb"/>
    <path d="M110 90H450A50 50 0 0 1 450 190H110A50 50 0 0 1 110 90Z" fill="#eee"/>
    <circle cx="130" cy="140" r="26" fill="none" stroke-dasharray="7 5"/>
    <circle cx="430" cy="140" r="40" fill="none" stroke-dasharray="7 5"/>
    <path d="M130 114L430 100M130 166L430 180" stroke-dasharray="7 5"/>
    <path d="M462 290H478V390H462Z" fill="#ddd"/>
    <path d="M430 360L462 340V380ZM510 360L478 340V380Z"/>
  </g>
</svg>
`;
