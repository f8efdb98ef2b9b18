// The scenes to look at. `page` is the number of a line of the demo walk; `where` is where the window was left; `taps` are
// names of buttons to press, or functions of the page.
export const scenes = [
  { name: "bay-empty", where: { screen: "bay" } },
  { name: "step-open", page: "000" },
];
