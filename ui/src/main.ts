// Puts the app on the page. Nothing else happens here.
import "@fontsource/atkinson-hyperlegible/400.css";
import "@fontsource/atkinson-hyperlegible/700.css";
import { mount } from "svelte";
import App from "./App.svelte";
import "./app.css";

const place = document.getElementById("app");
if (place === null) {
  throw new Error("index.html has no element with the id 'app', so the screen can't be drawn.");
}

mount(App, { target: place });
