/** client/main.tsx - where the window begins. */
import { render } from "preact";

const place = document.getElementById("app");
if (place !== null) render(<p>Passagework</p>, place);
