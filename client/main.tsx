/** client/main.tsx - where the window begins. */
import "./state/no-eval.ts";
import { render } from "preact";
import "./look/tokens.css";
import "./look/page.css";
import "./look/read.css";
import "./look/forms.css";
import "./look/pictures.css";
import "./look/rooms.css";
import "./look/decide.css";
import "./look/find.css";
import "./look/print.css";
import "./look/ride-lanes.css";
import "./look/ride.css";
import "./look/ride-phone.css";
import { Frame } from "./frame/frame.tsx";
import { listen } from "./state/news.ts";

const place = document.getElementById("app");
if (place !== null) render(<Frame />, place);
listen();
