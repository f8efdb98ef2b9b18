// The scenes of backups and of the ways back, from the shop setup and from the bay.
import { settled } from "./settled.mjs";

const none = { plan: null, made: null, age: null, due: false, failed: null };
const folder = "/media/shop-stick/panside-backups";
const planned = { ...none, plan: { folder, every_hours: 24, keep: 14 }, due: true };
const made = {
  ...planned,
  due: false,
  age: "3 hours ago",
  made: {
    path: `${folder}/2026-03-02T081500Z-354`,
    wall_ms: 1_772_438_400_000,
    events: 354,
    lacks: ["Photo 2f6b9c0d of job 082ac683 was altered on disk."],
  },
};
const whole = { ...made, made: { ...made.made, lacks: [] } };
const failed = {
  ...made,
  age: "4 days ago",
  due: true,
  failed: `The last backup failed. Put that right; it is tried again every hour. The folder for backups ${folder} is not there. Plug in its disk or choose another folder; nothing was backed up.`,
};
const facts = (age, events, photos, more = {}) => ({
  age,
  events,
  photos,
  lacks: 0,
  another: false,
  ...more,
});
const line = (name, holds, wrong = null) => ({ path: `${folder}/${name}`, name, facts: holds, wrong });
const backups_in = [
  line("2026-03-02T081500Z-354", facts("3 hours ago", 354, 12)),
  line("2026-03-01T081500Z-301", facts("27 hours ago", 301, 9, { lacks: 1 })),
  line("2026-02-28T170300Z-88", facts("2 days ago", 88, 2, { another: true })),
  line(
    "2026-02-27T170300Z-12",
    null,
    `The folder ${folder}/2026-02-27T170300Z-12 is no backup that can be read (EOF while parsing a value at line 1 column 0). Choose a folder such as 2026-11-30T081500Z-354.`,
  ),
];
const lacks = {
  entries: 23,
  jobs: [
    { called: 'RO 20417 "Demo wagon, flare on 2-3"', restored: 163, lacking: 21 },
    { called: 'RO 20422 "Demo wagon, filter and fluid"', restored: 0, lacking: 2 },
  ],
};
const ahead = {
  backup: facts("3 hours ago", 354, 12),
  lacks,
  photos_missing: ["Photo 2f6b9c0d of job 082ac683 is missing on disk."],
  moved_to: null,
};
const restored = { ...ahead, moved_to: "/home/shop/.local/share/panside/bay.before-2026-03-02T111742Z" };
const gone = {
  throws: {
    kind: "store",
    message:
      "The store /home/shop/.local/share/panside/bay has lost its database: its head file is there, the database is not. Restore a backup.",
    pin_of: null,
  },
};
const damaged = {
  said: [
    "The journal does not hold: entry 114 does not follow entry 113. Restore a backup, or save what holds.",
  ],
  go_on: false,
  troubled: true,
};
const saved = {
  into: "/media/shop-stick/saved",
  events: 341,
  subjects: 3,
  documents: 7,
  photos: 12,
  not_saved: [
    "job 082ac683-5b1e-4c0f-9a2d-7f3e6d1c8b40: 113 of 126 entries; entry 114 is gone or does not hold, and 12 after it that hold by themselves have nothing to follow.",
    "The head file confirms 354 entries in all; 341 are saved.",
  ],
};

/** The section is the last one of the shop setup. */
const section = async (page) => {
  await page
    .getByRole("main")
    .last()
    .evaluate((place) => {
      place.scrollTop = place.scrollHeight;
    });
  await settled(page);
};
const type = (text) => async (page) => {
  await page.getByRole("dialog").getByRole("textbox").first().fill(text);
};
const first = (name) => (page) => page.getByRole("dialog").getByRole("button", { name }).first().click();
const exactly = (name) => (page) => page.getByRole("button", { name, exact: true }).click();
const setup = (now, more = {}) => ({ where: { screen: "setup" }, answers: { backups: now, ...more } });

export const backups = [
  { name: "backups-none", ...setup(none), taps: [section] },
  { name: "backups-planned", ...setup(planned), taps: [section] },
  { name: "backups-made", ...setup(made), taps: [section] },
  { name: "backups-failed", ...setup(failed), taps: [section] },
  {
    name: "backups-made-now",
    ...setup(whole, { back_up: { backups: whole, photos: 12, copied: 3, removed: 1 } }),
    taps: [section, "Back up now", settled],
  },
  {
    name: "backups-making",
    ...setup(planned, { back_up: { waits: true } }),
    taps: [section, "Back up now", settled],
  },
  { name: "backups-plan", ...setup(none), taps: [section, "Set up backups"] },
  {
    name: "backups-plan-refused",
    ...setup(whole, {
      put_backup_plan: {
        throws: {
          kind: "other",
          message: "The folder for backups is not there. Type its whole path, from / on.",
          pin_of: null,
        },
      },
    }),
    taps: [section, /Change.*Backups/, type("/media/shop-stik"), exactly("SAVE"), settled],
  },
  { name: "restore-list", ...setup(whole, { backups_in }), taps: [section, "Restore a backup", settled] },
  {
    name: "restore-list-none",
    ...setup(none, { backups_in: [] }),
    taps: [section, "Restore a backup", type("/media/shop-stick"), "Find backups", settled],
  },
  {
    name: "restore-question",
    ...setup(whole, { backups_in, look_at_backup: ahead }),
    taps: [section, "Restore a backup", settled, first("Restore"), settled],
  },
  {
    name: "restore-question-unknown",
    ...setup(whole, {
      backups_in,
      look_at_backup: {
        ...ahead,
        backup: backups_in[2].facts,
        lacks: { entries: null, jobs: [] },
        photos_missing: [],
      },
    }),
    taps: [section, "Restore a backup", settled, first("Restore"), settled],
  },
  {
    name: "restore-failed",
    ...setup(whole, {
      backups_in,
      look_at_backup: { ...ahead, lacks: { entries: 0, jobs: [] }, photos_missing: [] },
      restore: {
        throws: {
          kind: "store",
          message:
            "The disk is full: restoring a backup was refused and nothing was written. Free some space, then try again; reading goes on.",
          pin_of: null,
        },
      },
    }),
    taps: [section, "Restore a backup", settled, first("Restore"), settled, exactly("RESTORE"), settled],
  },
  {
    name: "restore-doing",
    ...setup(whole, { backups_in, look_at_backup: ahead, restore: { waits: true } }),
    taps: [section, "Restore a backup", settled, first("Restore"), settled, exactly("RESTORE"), settled],
  },
  {
    name: "restored",
    ...setup(whole, { backups_in, look_at_backup: ahead, restore: restored }),
    taps: [section, "Restore a backup", settled, first("Restore"), settled, exactly("RESTORE"), settled],
  },
  {
    name: "bay-store-gone",
    where: { screen: "bay" },
    answers: { jobs: gone, backups: gone, troubles: gone },
  },
  { name: "backups-unread", ...setup(gone), taps: [section] },
  { name: "bay-store-damaged", where: { screen: "bay" }, troubles: damaged },
  {
    name: "save-form",
    where: { screen: "bay" },
    troubles: damaged,
    taps: ["Save what can be read", type("/media/shop-stick/saved")],
  },
  {
    name: "save-saved",
    where: { screen: "bay" },
    troubles: damaged,
    answers: { salvage: saved },
    taps: ["Save what can be read", type("/media/shop-stick/saved"), exactly("SAVE"), settled],
  },
];
