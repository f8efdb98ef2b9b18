// Places in the demo walk by what is done there, so that a line that comes into the walk moves no scene to another place.
import { readFileSync } from "node:fs";

const walk = new URL("../../checklists/demo/demo.walk.json", import.meta.url);

/** A line in words: `begin read_level`, `move raise`, `refused begin try_joint`, `finish`. */
function said({ do: does, refused }) {
  const [command, fields] = typeof does === "string" ? [does, {}] : Object.entries(does)[0];
  const what = fields.step ?? fields.action ?? fields.condition ?? fields.signature?.sign;
  const words = [command === "vehicle_action" ? "move" : command, what].filter((word) => word !== undefined);
  return (refused === undefined ? words : ["refused", ...words]).join(" ");
}

/** The number of the page after each line, by what the line does; from the second time on with how often it was done. */
const places = new Map([["start", 0]]);
JSON.parse(readFileSync(walk, "utf8")).lines.forEach((line, at) => {
  const words = said(line);
  let [place, time] = [words, 1];
  while (places.has(place)) {
    time += 1;
    place = `${words} ${time}`;
  }
  places.set(place, at + 1);
});

/** The name of the page that shows a place. */
export function pageAt(place) {
  const number = places.get(place);
  if (number === undefined) throw new Error(`The demo walk has no line "${place}".`);
  return String(number).padStart(3, "0");
}
