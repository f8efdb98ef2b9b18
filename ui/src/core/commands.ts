// Made by `cargo xtask types` from the Rust types. Change those, not this.

import type { Actor, Asking, BackedUpPage, BackupLine, BackupPlan, Backups, ChecklistList, ChecklistOffer, Command, EntryValue, FiguresPage, Found, Hash, Head, JobId, JobLine, JobPage, KeptTool, Opened, PersonId, Pin, PinAuthority, PinHolder, PinReply, Planning, Preview, Proving, RecordPage, Reply, RequestId, RestorePage, SalvagedPage, SavedPages, Setup, SheetFrom, SheetList, SheetPage, SheetValueView, ShopValue, Tool, ToolId, ToolView, TypedPerson, TypedSheet, TypedShopValue, TypedTool } from "./types";

/** Every command with what it takes and answers. */
export interface Commands {
  /** What the window finds when it opens: troubles of the store, people and tools, where it was. */
  opened: { takes: Record<string, never>; answers: Opened };
  /** Opens a store that could not be opened, or reads it anew after a failed write. */
  open_again: { takes: Record<string, never>; answers: null };
  /** What was found wrong with the store, at its opening or since. */
  troubles: { takes: Record<string, never>; answers: Found };
  /** Goes on from what is there, where newest entries are lost or the folder was copied; answers what is still wrong. */
  go_on: { takes: Record<string, never>; answers: Found };
  /** How it stands with the shop's backups. */
  backups: { takes: Record<string, never>; answers: Backups };
  /** Keeps where and how often the shop backs up; nothing ends it. */
  put_backup_plan: { takes: { plan: BackupPlan | null }; answers: Backups };
  /** Makes a backup by the plan now. */
  back_up: { takes: Record<string, never>; answers: BackedUpPage };
  /** The backups in a folder, the newest first. */
  backups_in: { takes: { folder: string }; answers: Array<BackupLine> };
  /** Reads a backup again and says what restoring it would come to. */
  look_at_backup: { takes: { backup: string }; answers: RestorePage };
  /** Restores a backup; the store that is there is moved aside. What is open then is the restored one. */
  restore: { takes: { backup: string }; answers: RestorePage };
  /** Saves what holds of a damaged store into a new one; the store that is there stays as it is. */
  salvage: { takes: { into: string }; answers: SalvagedPage };
  /** The jobs on this tablet. */
  jobs: { takes: Record<string, never>; answers: Array<JobLine> };
  /** What a job can be started with. */
  offers: { takes: Record<string, never>; answers: Array<ChecklistOffer> };
  /** How far the proof of a checklist for the vehicle of a sheet is, or for every vehicle where none is given; begins it */
  /** where there is none. It goes on when nobody asks. */
  prove: { takes: { checklist: Hash; sheet: string | null }; answers: Proving };
  /** Starts a job with a proved checklist. */
  start: { takes: { checklist: Hash; sheet: string; repairOrder: string; label: string; conditions: { [key in string]: string }; actor: Actor; request: RequestId }; answers: JobId };
  /** A job as its screen shows it. */
  look: { takes: { job: JobId }; answers: JobPage };
  /** The order with the least expected time for 1 or 2 people, as far as it is found: at once a good one, then the `best` */
  /** where that is wanted; `stale` has it made anew by the clock. */
  plan: { takes: { job: JobId; people: number; best: boolean; stale: boolean }; answers: Planning };
  /** Enters a command. When it is not refused, it is on disk. */
  enter: { takes: { job: JobId; head: Head; request: RequestId; actor: Actor; command: Command }; answers: Reply };
  /** What a value that is being typed would turn out to be. */
  preview: { takes: { job: JobId; step: string; entry: string; value: EntryValue }; answers: Preview };
  /** What a supplement, or the answer to one, that is being typed would turn out to be. */
  preview_asking: { takes: { job: JobId; typed: Asking }; answers: Preview };
  /** Keeps what is typed and not yet done. */
  put_draft: { takes: { job: JobId; key: string; text: string }; answers: null };
  /** Forgets what was typed. */
  clear_draft: { takes: { job: JobId; key: string }; answers: null };
  /** Keeps somebody new who works in the shop, what was changed of a person, or one who is back. */
  put_person: { takes: { person: TypedPerson; who: PersonId | null }; answers: Setup };
  /** Takes a person off the list who works here no more. */
  remove_person: { takes: { id: PersonId; seen: Array<Hash>; who: PersonId | null }; answers: Setup };
  /** Gives a person's PIN for what comes next. */
  give_pin: { takes: { person: PersonId; pin: Pin }; answers: PinReply };
  /** Sets a person's PIN, and answers who has one. */
  set_pin: { takes: { person: PersonId; pin: Pin; by: PinAuthority }; answers: Array<PinHolder> };
  /** What is to be said of torque tools today. */
  judge_tools: { takes: { tools: Array<Tool> }; answers: Array<ToolView> };
  /** Keeps a torque tool: a new one, one that is otherwise than before, or one that is back. */
  put_tool: { takes: { tool: TypedTool; who: PersonId | null }; answers: KeptTool };
  /** Takes a torque tool off the list. */
  remove_tool: { takes: { id: ToolId; seen: Array<Hash>; who: PersonId | null }; answers: Setup };
  /** Gives this device a name. */
  name_device: { takes: { name: string; seen: Array<Hash>; who: PersonId | null }; answers: Setup };
  /** The values that checklists ask of the shop for all its vehicles. */
  shop_values: { takes: Record<string, never>; answers: Array<ShopValue> };
  /** What is to be said of such a value while it is typed. */
  judge_shop_value: { takes: { value: TypedShopValue }; answers: SheetValueView };
  /** Keeps such a value, typed or as it was offered, and answers all of them. */
  put_shop_value: { takes: { value: TypedShopValue; who: PersonId | null }; answers: Array<ShopValue> };
  /** The shop's spec sheets and those of the program. */
  sheets: { takes: Record<string, never>; answers: SheetList };
  /** A spec sheet as it was kept. */
  sheet: { takes: { id: string }; answers: SheetPage };
  /** Begins to type a spec sheet, or goes on with a change of it. */
  begin_sheet: { takes: { from: SheetFrom }; answers: SheetPage };
  /** A spec sheet as far as it is typed. */
  typed_sheet: { takes: { draft: string }; answers: SheetPage };
  /** Keeps what is typed of a spec sheet, and says what is wrong with it. */
  type_sheet: { takes: { typed: TypedSheet }; answers: SheetPage };
  /** Forgets what is typed of a spec sheet. */
  drop_sheet: { takes: { draft: string }; answers: null };
  /** Keeps what is typed as the spec sheet's next revision, and answers its id. */
  keep_sheet: { takes: { draft: string; actor: Actor }; answers: string };
  /** Keeps that somebody compared values of a spec sheet with their sources. */
  check_sheet: { takes: { id: string; seen: Array<Hash>; keys: Array<string>; actor: Actor }; answers: null };
  /** Writes a spec sheet as a file beside the store and answers its path. */
  export_sheet: { takes: { id: string }; answers: string };
  /** The checklists of the program and those of the shop. */
  checklists: { takes: Record<string, never>; answers: ChecklistList };
  /** Has jobs started with a checklist of the shop from now on. */
  adopt_checklist: { takes: { checklist: Hash; seen: Array<Hash>; who: PersonId | null }; answers: ChecklistList };
  /** Forgets a checklist that was taken in and is not adopted. */
  drop_checklist: { takes: { id: string }; answers: ChecklistList };
  /** Writes a checklist as a file beside the store and answers its path. */
  export_checklist: { takes: { checklist: Hash }; answers: string };
  /** Keeps what the window wants to find again. */
  put_setting: { takes: { key: string; text: string }; answers: null };
  /** The record as far as the job has come: what is in it, what it lacks. */
  record_page: { takes: { job: JobId }; answers: RecordPage };
  /** What was measured in the job, as drawings. */
  figures: { takes: { job: JobId }; answers: FiguresPage };
  /** Writes pages of the record as PDF beside the store and answers the file's path. */
  save_record: { takes: { job: JobId; pages: SavedPages }; answers: string };
  /** Lets minutes pass on the demo clock. */
  let_pass: { takes: { minutes: number }; answers: null };
}

/** Commands whose arguments or answers are bytes. */
export type RawCommand = "add_photo" | "photo" | "thumbnail" | "import_sheet" | "import_checklist";
