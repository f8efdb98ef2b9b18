// The tablets that the screens are looked at on. A millimeter of a tablet has √(width² + height²) ÷ inches ÷ 25.4 pixels.

/** Every rule of axe-core that a screen is held to. */
const ALL = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "wcag2aaa", "best-practice"];

/** The rule whose answer goes with the room there is; the others find the same at every size. */
const ROOM = { type: "rule", values: ["scrollable-region-focusable"] };

/** Rules whose answer goes with the colors. */
const COLORS = { type: "rule", values: ["color-contrast", "color-contrast-enhanced"] };

/** By name: width and height in pixels, pixels of a millimeter, whether only one scene of each screen and pad is seen, and
 * rules of axe-core. Each shape of the window is held to all of them once, and once to `other` in the other light. */
export const SIZES = {
  "10-inch": { width: 1280, height: 800, mm: 160 / 25.4, some: false, rules: ALL },
  "8-inch": { width: 1280, height: 800, mm: 7.43, some: false, rules: ROOM },
  upright: { width: 800, height: 1280, mm: 6.3, some: true, rules: ALL, other: COLORS },
  "8-inch-upright": { width: 800, height: 1280, mm: 7.43, some: true, rules: ROOM },
  "13-inch": { width: 1920, height: 1200, mm: 6.86, some: true, rules: ROOM },
};

/** One scene of each screen, pad and overlay: enough to see that a shape is laid out. */
export const SOME = new Set([
  ...[
    "bay-jobs",
    "new-job",
    "photos",
    "photos-large",
    "figures",
    "figures-level",
    "record",
    "record-missing",
  ],
  ...[
    "setup",
    "setup-device",
    "setup-person",
    "setup-tool",
    "setup-pin",
    "setup-size",
    "setup-left",
    "setup-sheets",
  ],
  ...[
    "sheet-typing",
    "sheet-range",
    "sheet-chart",
    "sheet-torque",
    "rows-open",
    "rows-not-yet",
    "rows-level",
  ],
  ...["rows-meanwhile", "plan-order", "pad-reading", "pad-level", "pad-coil", "pad-cool-down-infrared"],
  ...[
    "pad-balance",
    "pad-balance-explain",
    "pad-count",
    "pad-torque",
    "pad-torque-bolts",
    "pad-torque-typed",
  ],
  ...[
    "pad-torque-tool",
    "pad-photo",
    "pad-photo-taken",
    "pad-choice",
    "pad-estimate",
    "pad-authorization",
    "pad-several",
    "pad-decision",
    "pad-decision-against",
    "pad-scan",
    "pad-timer",
  ],
  ...["pad-note", "pad-left", "frame-floor", "frame-dangers-long", "frame-pan-off", "frame-vehicle-actions"],
  ...["frame-job-steps", "frame-job-steps-opened", "frame-tray", "over-who", "over-more", "over-skip"],
  ...["over-stop", "over-observe", "over-renew"],
]);
