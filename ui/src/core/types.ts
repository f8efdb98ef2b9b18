// Made by `cargo xtask types` from the Rust types. Change those, not this.

/**
 * What somebody says and stands for: where pieces are that a count did not find, why a balance differs, why a tool was used
 * all the same, why a level can't be reached, why a decision is not what its table says.
 */
export type Accounted = { 
/**
 * What they say. Never empty.
 */
reason: string, 
/**
 * Who says so.
 */
by: PersonId, };

/**
 * Who asks. The name is not said here: it is the shop's to say ([`crate::Roster`]).
 */
export type Actor = { 
/**
 * The person.
 */
id: PersonId, 
/**
 * As what they act; one of what they are.
 */
role: Role, };

/**
 * An adapter that reaches past the tool's drive.
 */
export type Adapter = { 
/**
 * From the middle of the grip to the tool's drive, as decimal text.
 */
tool: string, 
/**
 * From the drive to the bolt, as decimal text.
 */
length: string, 
/**
 * The unit of both as text.
 */
unit: string, 
/**
 * Degrees between adapter and tool, as decimal text: 0 straight on, 90 square to it.
 */
angle: string, };

/**
 * What may be decided against the table.
 */
export type Against = { 
/**
 * The class.
 */
class: string, 
/**
 * Somebody else than who works the step stands for it.
 */
with_second_person: boolean, };

/**
 * A number with its unit, as text.
 */
export type Amount = { 
/**
 * To four figures.
 */
value: string, 
/**
 * The unit's symbol.
 */
unit: string, };

/**
 * An angle that fasteners are turned by after the last stage.
 */
export type AngleView = { 
/**
 * What each is turned by.
 */
by: Amount, 
/**
 * How many there are.
 */
fasteners: number, };

/**
 * What a customer answers.
 */
export type Answer = "agreed" | "declined" | "pending";

/**
 * An argument of a message.
 */
export type Arg = { "text": string } | { "number": number } | { "list": Array<string> } | { "any_of": Array<string> } | { "said": Message } | { "lines": Array<Arg> } | { "sentences": Array<Message> };

/**
 * The kinds of entry.
 */
export type Ask = { "sign_off": AskSignOff } | { "reading": AskReading } | { "level": AskLevel } | { "coil": AskCoil } | { "coils": AskCoils } | { "cool_down": AskCoolDown } | { "balance": AskBalance } | { "count": AskCount } | { "torque": AskTorque } | { "photo": AskPhoto } | { "choice": AskChoice } | { "several": AskSeveral } | { "decision": AskDecision } | { "scan": AskScan } | { "timer": AskTimer } | { "note": AskNote } | { "estimate": AskEstimate } | { "authorization": AskAuthorization };

/**
 * What the customer answers, with the amount that it is for.
 */
export type AskAuthorization = { 
/**
 * The estimate that is answered, as `step.entry`. Absent: the amount stands by itself.
 */
for: string | null, 
/**
 * Who may have given it, to tap.
 */
given_by: Array<string>, };

/**
 * Amounts drained and added, compared at 15 °C.
 */
export type AskBalance = { 
/**
 * What came out; at least one.
 */
drained: Array<BalanceAmount>, 
/**
 * What went in; at least one.
 */
added: Array<BalanceAmount>, 
/**
 * Sheet key of the fluid's density at 15 °C.
 */
density: string, 
/**
 * Sheet key of what may be lost or gained unseen, to both sides: splash, rags, what a new filter holds.
 */
unseen: string, 
/**
 * Sheet key of what the transmission holds, if the sheet says so.
 */
capacity: string | null, };

/**
 * A question with its answers.
 */
export type AskChoice = { 
/**
 * The answers, at least two.
 */
options: Array<ChoiceOption>, 
/**
 * True where the answer tells what the hands did: only then may a class change conditions.
 */
hands_did: boolean, };

/**
 * A coil's resistance with the coil's temperature, judged against a range of the sheet.
 */
export type AskCoil = { 
/**
 * Sheet key of the range it must be in.
 */
limits: string, 
/**
 * Sheet key of the temperature for which that range stands. Absent: 20 °C.
 */
at: string | null, };

/**
 * The resistances of the coils that the spec sheet lists, at one temperature.
 */
export type AskCoils = { 
/**
 * Sheet key of the list of coils.
 */
of: string, 
/**
 * Sheet key of the temperature for which their limits stand. Absent: 20 °C.
 */
at: string | null, 
/**
 * One coil is enough, such as that of a new solenoid; else each of the list is measured.
 */
some: boolean, };

/**
 * A surface probed against its touch limit. Earlier readings at this entry tell when it will be cool.
 */
export type AskCoolDown = { 
/**
 * Sheet key of the temperature up to which it may be touched.
 */
limit: string, 
/**
 * What is probed.
 */
place: ProbedPlace, 
/**
 * Conditions with the value that heats it, such as `{"engine": "running"}`: earlier readings count only since
 * none of them had that value.
 */
heated_by: { [key in string]: string }, };

/**
 * How many of each item are expected in the hand.
 */
export type AskCount = { 
/**
 * Expected pieces by item id.
 */
of: { [key in string]: number }, };

/**
 * A table over classes of other entries.
 */
export type AskDecision = { 
/**
 * What it can come to.
 */
options: Array<ChoiceOption>, 
/**
 * What a person may decide all the same, with a reason and a name.
 */
against: Array<Against>, };

/**
 * An estimate, with names to choose from, as nobody likes to write.
 */
export type AskEstimate = { 
/**
 * Names of parts to tap.
 */
parts: Array<string>, 
/**
 * Names of labor to tap.
 */
labor: Array<string>, 
/**
 * What may turn up, to tap.
 */
may_turn_up: Array<string>, };

/**
 * At least two stick readings, each with its temperature, judged against the sheet's chart.
 */
export type AskLevel = { 
/**
 * Sheet key of the level chart.
 */
chart: string, 
/**
 * Sheet key of the rise on the stick for each litre (`mm/L`): what to add or take out is told by it.
 */
gain: string | null, 
/**
 * What was added before this level was read, for learning the rise on this vehicle.
 */
added: LevelAdded | null, 
/**
 * The level may be given up, with a reason and a name: a vehicle that leaks never reaches its band.
 */
may_give_up: boolean, };

/**
 * A note, with words to choose from, as nobody likes to write.
 */
export type AskNote = { 
/**
 * Short texts to tap.
 */
words: Array<string>, 
/**
 * Sheet key of a list of coils, whose names are to tap too.
 */
words_of: string | null, };

/**
 * What the photo must show.
 */
export type AskPhoto = { 
/**
 * What must be on it.
 */
of: string, 
/**
 * Whether a scale must lie in the picture.
 */
with_scale: boolean, 
/**
 * It stands on the first page of the record and on the customer's copy; at most four of a checklist do.
 */
first_page: boolean, };

/**
 * A value with its unit, judged against at most one limit of the spec sheet.
 */
export type AskReading = { 
/**
 * The unit it is asked in (`°C`, `V`, `Ω`, `L`, `km`, …). Others of the same quantity are converted.
 */
unit: string, 
/**
 * Sheet key of a measure it must not be above.
 */
at_most: string | null, 
/**
 * Sheet key of a measure it must not be below.
 */
at_least: string | null, 
/**
 * Sheet key of a range it must be in.
 */
within: string | null, };

/**
 * What is scanned or typed.
 */
export type AskScan = { 
/**
 * What the text is.
 */
of: ScanOf, };

/**
 * What may be found, any number of it at once. The worst of what is found decides.
 */
export type AskSeveral = { 
/**
 * What may be found, at least two.
 */
options: Array<SeveralOption>, 
/**
 * The class where nothing of the list is found. Absent: at least one must be.
 */
none: string | null, };

/**
 * Names one of the checklist's `sign_offs`. It is given when the step is done and judged on its outcome.
 */
export type AskSignOff = { 
/**
 * Id in `sign_offs`.
 */
sign: string, };

/**
 * How long to wait, counted from the beginning of the step.
 */
export type AskTimer = { 
/**
 * Sheet key of a measure in minutes.
 */
at_least: string, };

/**
 * Which fasteners, by the sheet's torque value.
 */
export type AskTorque = { 
/**
 * Sheet key of the torque with its stages.
 */
spec: string, 
/**
 * The items that it tightens. The sheet's torque must then be for as many fasteners as there are of them.
 */
of: Array<string>, 
/**
 * A click counts only if it is inside with all that the tool may be off.
 */
guarded: boolean, 
/**
 * What may speak against the tool and be excepted by name. A setting outside tolerance never is.
 */
exceptions: Array<Excepted>, };

/**
 * What is typed of a supplement.
 */
export type Asking = { "lines": EstimateLines } | { "answer": { 
/**
 * The number of the event that asked.
 */
asked: number, 
/**
 * The answer.
 */
answer: Authorized, } };

/**
 * The customer's answer.
 */
export type Authorized = { 
/**
 * Yes, no, or none yet.
 */
answer: Answer, 
/**
 * What it is for, as decimal text. May be empty where nothing was agreed to.
 */
amount: string, 
/**
 * The currency, by its code.
 */
currency: string, 
/**
 * Who gave it, such as the owner. Empty while there is no answer.
 */
given_by: string, 
/**
 * How it was given. Absent while there is no answer.
 */
means?: Means | null, 
/**
 * When it was given by the shop's clock, as `HH:MM` of the same day or `YYYY-MM-DD HH:MM`. Absent: when it was
 * entered.
 */
given_at?: string | null, };

/**
 * An axis with its full steps.
 */
export type Axis = { 
/**
 * What it counts, in which unit; nothing where it has no numbers.
 */
title: Message | null, 
/**
 * Its steps, rising.
 */
ticks: Array<Tick>, };

/**
 * A backup that was made just now.
 */
export type BackedUpPage = { 
/**
 * How it stands now.
 */
backups: Backups, 
/**
 * How many photos belong to it.
 */
photos: number, 
/**
 * How many of them no earlier backup had.
 */
copied: number, 
/**
 * How many older backups were taken away.
 */
removed: number, };

/**
 * What a backup says of itself.
 */
export type BackupFacts = { 
/**
 * How long ago it was made, as it is said.
 */
age: string, 
/**
 * How many entries it has.
 */
events: number, 
/**
 * How many photos.
 */
photos: number, 
/**
 * How many photos and texts its store no longer had whole when it was made.
 */
lacks: number, 
/**
 * It is known to be of another tablet's store.
 */
another: boolean, };

/**
 * A backup as it is found in a folder. It says so itself; whether it holds is seen when it is looked at.
 */
export type BackupLine = { 
/**
 * Its folder.
 */
path: string, 
/**
 * The name of its folder.
 */
name: string, 
/**
 * What it says of itself. Nothing: it can't be read.
 */
facts: BackupFacts | null, 
/**
 * Why it can't be read, as a sentence.
 */
wrong: string | null, };

/**
 * The newest backup that was made by the plan.
 */
export type BackupMade = { 
/**
 * Its folder.
 */
path: string, 
/**
 * When it was made: milliseconds since 1970 UTC.
 */
wall_ms: number, 
/**
 * How many entries it has.
 */
events: number, 
/**
 * What it lacks, as sentences: photos that this tablet itself no longer has whole.
 */
lacks: Array<string>, };

/**
 * Where and how often the shop backs up.
 */
export type BackupPlan = { 
/**
 * The folder, best on another disk.
 */
folder: string, 
/**
 * Hours from one backup to the next: 1 to 720.
 */
every_hours: number, 
/**
 * How many are kept: 1 to 1000.
 */
keep: number, };

/**
 * How it stands with the shop's backups.
 */
export type Backups = { 
/**
 * Where and how often. Nothing: the shop named no folder.
 */
plan: BackupPlan | null, 
/**
 * The newest one.
 */
made: BackupMade | null, 
/**
 * How long ago it was made, as it is said.
 */
age: string | null, 
/**
 * It is time for the next one.
 */
due: boolean, 
/**
 * Why the last try came to nothing, as a sentence.
 */
failed: string | null, };

/**
 * An amount that another entry took down.
 */
export type BalanceAmount = { 
/**
 * The reading of its volume, as `step.entry`.
 */
volume: string, 
/**
 * The reading of its temperature, as `step.entry`. Absent: fluid from the can, whose temperature is asked for here.
 */
temperature: string | null, };

/**
 * An area between two edges.
 */
export type Band = { 
/**
 * The lower edge, from left to right.
 */
low: Array<Spot>, 
/**
 * The upper edge, from left to right.
 */
high: Array<Spot>, };

/**
 * A map of fasteners.
 */
export type BoltMap = { 
/**
 * The height of the map, in [`FULL`] parts of its width.
 */
height: number, 
/**
 * The fasteners in the order in which each stage tightens them.
 */
bolts: Array<DrawnBolt>, 
/**
 * The stages, in their order.
 */
stages: Array<StageLine>, 
/**
 * The number of the next one, while a stage is not clicked.
 */
next: number | null, };

/**
 * One boot of the device's operating system; monotonic times compare only within it.
 */
export type BootId = string;

/**
 * A step that can be taken up while something is waited for.
 */
export type CanDo = { 
/**
 * The step.
 */
step: string, 
/**
 * Its minutes by hand.
 */
minutes: number, 
/**
 * By how many minutes the whole job takes longer if it is taken up first; nothing where no way to the end was found.
 */
extra_min: number | null, 
/**
 * Whether `extra_min` is certain, or the difference of two good orders.
 */
exact: boolean, };

/**
 * A caution with its signal word.
 */
export type Caution = { 
/**
 * The signal word.
 */
signal: Signal, 
/**
 * Hazard and how to avoid it, as one or two sentences.
 */
text: string, };

/**
 * A chart to draw.
 */
export type ChartView = { 
/**
 * Axes and band.
 */
plot: Plot, 
/**
 * The rows that are typed far enough to be drawn, by rising temperature.
 */
points: Array<DrawnPoint>, 
/**
 * The picture in words.
 */
says: Message, };

/**
 * A revision of a checklist as the shop setup lists it.
 */
export type ChecklistLine = { 
/**
 * What a job with it would be, and the spec sheets that fit it.
 */
offer: ChecklistOffer, 
/**
 * The program carries it.
 */
built_in: boolean, 
/**
 * The shop has adopted it; another one of the shop is only taken in.
 */
adopted: boolean, 
/**
 * It is proved for the vehicle of at least one sheet, or for every vehicle where it hangs on none.
 */
proved: boolean, 
/**
 * For which spec sheets a proof is still to be made, by id: one for all that say the same of what the proof hangs on.
 * None stands for every vehicle, where no sheet fits and it hangs on no vehicle.
 */
to_prove: Array<string | null>, 
/**
 * What it asks of a spec sheet, as people read it.
 */
needs: Array<string>, 
/**
 * The newest events about it that this shows; adopting it names them.
 */
seen: Array<Hash>, };

/**
 * The checklists there are.
 */
export type ChecklistList = { 
/**
 * Those of the program, then those of the shop.
 */
checklists: Array<ChecklistLine>, 
/**
 * Checklists of the shop that can't be used, as sentences.
 */
unreadable: Array<string>, };

/**
 * A checklist as it is offered.
 */
export type ChecklistOffer = { 
/**
 * Names it: revisions have the same id, but not the same hash.
 */
hash: Hash, 
/**
 * Its id.
 */
id: string, 
/**
 * What the job is.
 */
title: string, 
/**
 * Its revision.
 */
revision: number, 
/**
 * Invented content.
 */
demo: boolean, 
/**
 * Number of its steps.
 */
steps: number, 
/**
 * A proof of it is kept on this tablet for the vehicle of at least one of the sheets.
 */
proved: boolean, 
/**
 * What is asked about the vehicle as it comes in.
 */
questions: Array<Question>, 
/**
 * The spec sheets that fit it.
 */
sheets: Array<SheetOffer>, };

/**
 * One answer. Its id is the class.
 */
export type ChoiceOption = { 
/**
 * The class.
 */
class: string, 
/**
 * What the button says.
 */
label: string, };

/**
 * Time on the job.
 */
export type ClockView = { 
/**
 * When it started.
 */
started: Stamp | null, 
/**
 * Minutes since then, or until it ended.
 */
minutes: number, 
/**
 * Minutes of them that somebody was in a step.
 */
in_steps: number, };

/**
 * What an ohmmeter showed at one coil of a list.
 */
export type CoilShown = { 
/**
 * The coil's name on the sheet.
 */
coil: string, 
/**
 * Decimal text, or `OL` where the meter shows overload.
 */
shows: string, };

/**
 * What an ohmmeter showed at a coil.
 */
export type CoilValue = { 
/**
 * Decimal text, or `OL` where the meter shows overload.
 */
shows: string, 
/**
 * The unit of all resistances here as text.
 */
unit: string, 
/**
 * What it shows with its leads held together, as decimal text. Absent: it was zeroed.
 */
leads?: string | null, 
/**
 * The coil's temperature as decimal text.
 */
temperature: string, 
/**
 * Its unit as text.
 */
temperature_unit: string, 
/**
 * How far the meter may be off. Absent: it is not known, and the reading is judged as it stands.
 */
meter?: MeterError | null, };

/**
 * What an ohmmeter showed at the coils of a list.
 */
export type CoilsValue = { 
/**
 * Each coil once.
 */
readings: Array<CoilShown>, 
/**
 * The unit of all resistances here as text.
 */
unit: string, 
/**
 * What the meter shows with its leads held together, as decimal text. Absent: it was zeroed.
 */
leads?: string | null, 
/**
 * The temperature of all coils as decimal text.
 */
temperature: string, 
/**
 * Its unit as text.
 */
temperature_unit: string, 
/**
 * How far the meter may be off. Absent: it is not known, and the readings are judged as they stand.
 */
meter?: MeterError | null, };

/**
 * A column that stands on the axis below.
 */
export type Column = { 
/**
 * Its left edge.
 */
from: number, 
/**
 * Its right edge.
 */
to: number, 
/**
 * Its height.
 */
height: number, 
/**
 * What stands below it.
 */
name: Message, };

/**
 * One command. Names are the ids of the checklist.
 */
export type Command = { "begin": { 
/**
 * Step id.
 */
step: string, } } | { "leave": { 
/**
 * Step id.
 */
step: string, } } | { "enter": { 
/**
 * Step id.
 */
step: string, 
/**
 * Entry id.
 */
entry: string, 
/**
 * The value.
 */
value: EntryValue, } } | { "done": { 
/**
 * Step id.
 */
step: string, 
/**
 * One for each sign-off the step asks for.
 */
signatures: Array<Signature>, } } | { "work": { 
/**
 * Step id.
 */
step: string, 
/**
 * Values by entry id.
 */
entries: { [key in string]: EntryValue }, 
/**
 * One for each sign-off the step asks for.
 */
signatures: Array<Signature>, 
/**
 * The work was done before and is entered only now.
 */
later: boolean, } } | { "vehicle_action": { 
/**
 * Its id.
 */
action: string, } } | { "sign": { 
/**
 * The signature, with the sign-off it is for.
 */
signature: Signature, } } | { "sign_again": { 
/**
 * The signatures.
 */
signatures: Array<Signature>, } } | { "skip": { 
/**
 * Step id.
 */
step: string, 
/**
 * Why. Never empty.
 */
reason: string, } } | { "void": { 
/**
 * Step id.
 */
step: string, 
/**
 * Why. Never empty.
 */
reason: string, } } | { "correct": { 
/**
 * Step id.
 */
step: string, 
/**
 * Values by entry id; every required one.
 */
entries: { [key in string]: EntryValue }, 
/**
 * One for each sign-off the step asks for.
 */
signatures: Array<Signature>, 
/**
 * What was wrong.
 */
reason: string | null, } } | { "observe": { 
/**
 * Condition id.
 */
condition: string, 
/**
 * The value it has.
 */
value: string, 
/**
 * How it came to that. Never empty.
 */
reason: string, } } | { "explain_missed": { 
/**
 * Step id.
 */
step: string, 
/**
 * Why. Never empty.
 */
reason: string, } } | { "found": { 
/**
 * What was found. Never empty.
 */
text: string, 
/**
 * Where.
 */
at: string | null, 
/**
 * What has to be done about it.
 */
urgency: Urgency, 
/**
 * Photos of it.
 */
photos: Array<EntryValue>, } } | { "dealt_with": { 
/**
 * The number of the event that it was found with.
 */
found: number, 
/**
 * What was done about it. Never empty.
 */
text: string, } } | { "ask_customer": { 
/**
 * The step that waits for the answer, by id.
 */
step: string, 
/**
 * What turned up. Never empty.
 */
text: string, 
/**
 * The finding that it is made from, by the number of its event.
 */
found: number | null, 
/**
 * Parts and labor.
 */
lines: EstimateLines, } } | { "answer": { 
/**
 * The number of the event that asked.
 */
asked: number, 
/**
 * The answer.
 */
answer: Authorized, } } | { "go_on_without": { 
/**
 * The number of the event that asked.
 */
asked: number, 
/**
 * Why. Never empty.
 */
reason: string, } } | { "piece_off": { 
/**
 * What they are. Never empty.
 */
name: string, 
/**
 * How many, from 1 to 63.
 */
count: number, 
/**
 * Where they come from.
 */
at: string | null, 
/**
 * Photos of them in their place.
 */
photos: Array<EntryValue>, } } | { "piece_back": { 
/**
 * The number of the event that they came off with.
 */
piece: number, 
/**
 * How many.
 */
count: number, 
/**
 * To what they were tightened.
 */
torque: string | null, } } | { "piece_gone": { 
/**
 * The number of the event that they came off with.
 */
piece: number, 
/**
 * How many.
 */
count: number, 
/**
 * Why, and who says so.
 */
accounted: Accounted, } } | { "take_back": { 
/**
 * The number of its event.
 */
of: number, 
/**
 * Why. Never empty.
 */
reason: string, } } | "finish" | { "stop": { 
/**
 * Why. Never empty.
 */
reason: string, } };

/**
 * A value that a condition can have.
 */
export type ConditionValue = { 
/**
 * The value.
 */
value: string, 
/**
 * In words.
 */
says: string, };

/**
 * A condition of the vehicle or the bay.
 */
export type ConditionView = { 
/**
 * Condition id.
 */
id: string, 
/**
 * In words.
 */
name: string, 
/**
 * Its value.
 */
value: string, 
/**
 * The value in words.
 */
says: string, 
/**
 * Every value it can have.
 */
values: Array<ConditionValue>, 
/**
 * Which part of the vehicle line shows it.
 */
draws: string | null, };

/**
 * A danger.
 */
export type DangerView = { 
/**
 * Danger id.
 */
id: string, 
/**
 * The signal word.
 */
signal: Signal, 
/**
 * What it does and the way back to safe.
 */
text: string, };

/**
 * An entry that decides.
 */
export type DecisionInput = { 
/**
 * What it is called.
 */
label: Message, 
/**
 * What it is.
 */
is: Message, };

/**
 * What a decision's table says: of a step in progress, to come or to be corrected what it says now, else what it
 * said then.
 */
export type DecisionView = { 
/**
 * The class that the table comes to; nothing while something is to be entered first.
 */
class: string | null, 
/**
 * The sentence of its row, or what is to be entered first.
 */
says: Message, 
/**
 * What decides, as far as it is there.
 */
inputs: Array<DecisionInput>, };

/**
 * A device of the shop.
 */
export type Device = { 
/**
 * Its id.
 */
id: DeviceId, 
/**
 * What it is called; nothing yet.
 */
name: string | null, };

/**
 * The device that wrote an event; made once, when its store is made.
 */
export type DeviceId = string;

/**
 * What is drawn.
 */
export type Drawing = { "plot": Plot } | { "bolts": BoltMap };

/**
 * A fastener on the map.
 */
export type DrawnBolt = { 
/**
 * Its place in the order, from 1.
 */
number: number, 
/**
 * From the left.
 */
x: number, 
/**
 * From below.
 */
y: number, 
/**
 * What is different about it.
 */
note: string | null, };

/**
 * One temperature of a drawn chart, in parts of the drawing as [`crate::figures`] counts them.
 */
export type DrawnPoint = { 
/**
 * The row it is typed in, from 0.
 */
row: number, 
/**
 * Where across.
 */
at: number, 
/**
 * Where the low mark is.
 */
low: number, 
/**
 * Where the high mark is.
 */
high: number, 
/**
 * The low mark is not below the high one.
 */
crossed: boolean, };

/**
 * Whether a job has ended.
 */
export type Ended = "open" | "ending" | "finished" | "stopped";

/**
 * Who ended a job.
 */
export type EndedBy = { 
/**
 * Who.
 */
who: string, 
/**
 * On which day.
 */
day: string, 
/**
 * At which time, to the minute.
 */
time: string, 
/**
 * Why it was stopped.
 */
reason: string | null, };

/**
 * What was entered at one entry of a step: one variant for each kind in `panside_procedure::format::Ask`.
 */
export type EntryValue = { "sign_off": Signature } | { "reading": { 
/**
 * Decimal text, with comma or point.
 */
value: string, 
/**
 * The unit as text, such as `°C`.
 */
unit: string, } } | { "level": { 
/**
 * At least two are needed for a level to be known.
 */
readings: Array<StickReading>, 
/**
 * Seating of the stick, temperature and idle were looked at again and the stick still stayed dry.
 */
confirmed_no_trace: boolean, 
/**
 * Why the level can't be brought into its band, and who says so.
 */
given_up?: Accounted | null, } } | { "coil": CoilValue } | { "coils": CoilsValue } | { "cool_down": Probed } | { "balance": { 
/**
 * Temperature of the fluid from the can as decimal text; empty where no amount asks for it.
 */
temperature: string, 
/**
 * Its unit as text.
 */
temperature_unit: string, 
/**
 * Why the two sides differ, and who says so.
 */
explained?: Accounted | null, } } | { "count": { 
/**
 * How many were counted, by item id.
 */
of: { [key in string]: number }, 
/**
 * Where the missing ones are, and who says so.
 */
accounted?: Accounted | null, } } | { "torque": { 
/**
 * The setting that clicked at each stage, in order, as decimal text.
 */
stages: Array<string>, 
/**
 * The unit of the settings as text, such as `N·m`.
 */
unit: string, 
/**
 * The tool.
 */
tool: Tool, 
/**
 * The adapter between tool and bolt, where one was used.
 */
adapter?: Adapter | null, 
/**
 * The degrees each fastener was turned after the last stage, as decimal text, where the sheet asks for them.
 */
angles?: Array<string>, 
/**
 * Why the tool was used although something speaks against it, and who says so.
 */
exception?: Accounted | null, } } | { "photo": { 
/**
 * SHA-256 of the kept bytes, 64 lower-case hex digits.
 */
hash: string, 
/**
 * Width in pixels, above 0.
 */
width: number, 
/**
 * Height in pixels, above 0.
 */
height: number, } } | { "choice": { 
/**
 * The class of the option chosen.
 */
class: string, } } | { "several": { 
/**
 * The ids of the options that were found. Empty: none of them.
 */
found: Array<string>, } } | { "decision": { 
/**
 * The class that is decided.
 */
class: string, 
/**
 * Why it is not what the table says, and who stands for it.
 */
against?: Accounted | null, 
/**
 * Where a second person has to stand for it: what is known of their PIN. Whoever checks PINs puts it in; what a
 * command says here counts for nothing.
 */
pin?: SignedPin | null, } } | { "scan": { 
/**
 * The text.
 */
text: string, } } | { "timer": Record<symbol, never> } | { "note": { 
/**
 * The text.
 */
text: string, } } | { "estimate": EstimateLines } | { "authorization": Authorized };

/**
 * One entry of a step.
 */
export type EntryView = { 
/**
 * Entry id.
 */
id: string, 
/**
 * What the control says.
 */
label: string, 
/**
 * The kind, with its fields.
 */
ask: Ask, 
/**
 * Whether the step can be done without it.
 */
optional: boolean, 
/**
 * What the sheet allows, for showing beside it; for torque one line a stage.
 */
limits: Array<Message>, 
/**
 * Symbols of the units that a value may be typed in, the usual one first. For a level: of the trace.
 */
units: Array<string>, 
/**
 * For a level: symbols of the units that the temperature may be typed in, the usual one first.
 */
temperature_units: Array<string>, 
/**
 * For a torque: what the sheet asks for.
 */
torque: TorqueView | null, 
/**
 * For a customer's answer: what the estimate that it is for comes to.
 */
estimate: EstimateView | null, 
/**
 * For a resistance: what a meter shows, without a unit, where there is more than it can measure; the usual first.
 */
overload: Array<string>, 
/**
 * The names on the sheet's list of coils, in the order in which they are measured: for what is measured at them, and
 * for a note that names one.
 */
coils: Array<string>, 
/**
 * For a torque whose places the sheet gives: the map of its fasteners.
 */
bolts: BoltMap | null, 
/**
 * For a decision: what its table says.
 */
decision: DecisionView | null, 
/**
 * What was last entered in the attempt that is shown.
 */
value: EntryValue | null, 
/**
 * What that turned out to be.
 */
class: string | null, 
/**
 * Classes that end the job by stop and call.
 */
ends: Array<string>, 
/**
 * That value keeps the step in progress.
 */
not_yet: boolean, 
/**
 * What is said about that value.
 */
said: Array<Message>, 
/**
 * A timer of a step in progress: milliseconds still to wait.
 */
ms_left: number | null, };

/**
 * Parts and labor with their prices, and what may turn up on top, before tax.
 */
export type EstimateLines = { 
/**
 * The currency of every amount, by its code.
 */
currency: string, 
/**
 * Parts.
 */
parts: Array<PartLine>, 
/**
 * Labor.
 */
labor: Array<LaborLine>, 
/**
 * What may turn up.
 */
may_turn_up: Array<MayTurnUpLine>, };

/**
 * What an estimate comes to, before tax.
 */
export type EstimateView = { 
/**
 * Parts and labor.
 */
sum: Amount, 
/**
 * The same with all that may turn up; nothing where nothing may.
 */
limit: Amount | null, };

/**
 * What speaks against a tool and can be excepted.
 */
export type Excepted = "tool_out_of_range" | "calibration_past" | "not_proved";

/**
 * Something wrong in one field.
 */
export type FieldProblem = { 
/**
 * Which field, by its name in the form; nothing: the whole.
 */
field: string, 
/**
 * What is wrong and what to do about it.
 */
message: Message, };

/**
 * One drawing with what it says.
 */
export type Figure = { 
/**
 * What it is drawn from: the sheet's key, or step and entry.
 */
id: string, 
/**
 * What it shows.
 */
kind: FigureKind, 
/**
 * What stands above it.
 */
title: Message, 
/**
 * All that it shows, in sentences.
 */
says: Array<Message>, 
/**
 * What is drawn.
 */
drawing: Drawing, };

/**
 * What a figure shows.
 */
export type FigureKind = "level" | "cool_down" | "coil" | "balance" | "bolts";

/**
 * The figures of a job as a screen draws them.
 */
export type FiguresPage = { 
/**
 * The figures, in the order of the work.
 */
figures: Array<Figure>, };

/**
 * What was found wrong with the store.
 */
export type Found = { 
/**
 * As sentences.
 */
said: Array<string>, 
/**
 * Going on from what is there would put right what keeps it from taking entries.
 */
go_on: boolean, 
/**
 * The store takes no entries, because it is damaged or has lost something.
 */
troubled: boolean, };

/**
 * Something that was found.
 */
export type FoundView = { 
/**
 * The number of its event.
 */
seq: number, 
/**
 * What it is.
 */
text: string, 
/**
 * Where.
 */
at: string | null, 
/**
 * What has to be done about it.
 */
urgency: Urgency, 
/**
 * Photos of it.
 */
photos: Array<EntryValue>, 
/**
 * Who found it, and when.
 */
by: Mark, 
/**
 * What was done about it.
 */
dealt_with: Reason | null, 
/**
 * Why it no longer counts.
 */
taken_back: Reason | null, 
/**
 * The customer was asked about it.
 */
is_asked: boolean, };

/**
 * Something that is known or not.
 */
export type GateView = { 
/**
 * Gate id.
 */
id: string, 
/**
 * In words.
 */
name: string, 
/**
 * How it became known; nothing while it is not.
 */
known: Known | null, 
/**
 * What was last read or answered that decides it.
 */
last: Message | null, 
/**
 * Milliseconds for which it stays good, where it ages.
 */
ms_fresh: number | null, };

/**
 * One time a sign-off was given.
 */
export type Given = { 
/**
 * The signature.
 */
signature: Signature, 
/**
 * What who signed was called then.
 */
name: string, 
/**
 * Which event gave it.
 */
mark: Mark, 
/**
 * Which event made it lapse.
 */
lapsed: Mark | null, };

/**
 * A SHA-256 hash of an event's header, a body, a document or a photo.
 */
export type Hash = string;

/**
 * The newest event of a chain: what the next one must follow.
 */
export type Head = { 
/**
 * Its number in the chain; 0 when there is no event yet.
 */
seq: number, 
/**
 * Its hash; [`Hash::NONE`] when there is no event yet.
 */
hash: Hash, };

/**
 * A value that a condition can come in with.
 */
export type IntakeAnswer = { 
/**
 * The value.
 */
value: string, 
/**
 * In words.
 */
says: string, };

/**
 * A kind of part or fastener.
 */
export type ItemView = { 
/**
 * Item id.
 */
id: string, 
/**
 * What it is.
 */
name: string, 
/**
 * Pieces there are on the vehicle.
 */
count: number, 
/**
 * Whether the same piece may go back.
 */
reuse: Reuse, };

/**
 * One job: one vehicle with one checklist.
 */
export type JobId = string;

/**
 * What a backup lacks of a job.
 */
export type JobLacks = { 
/**
 * What the job is called.
 */
called: string, 
/**
 * How many entries the backup has of it.
 */
restored: number, 
/**
 * How many of the store's entries it lacks.
 */
lacking: number, };

/**
 * One line of the list of jobs. It is kept as the job's label in the store and made anew by `rebuild`.
 */
export type JobLine = { 
/**
 * The job.
 */
job: JobId, 
/**
 * Number of the repair order.
 */
repair_order: string, 
/**
 * What the job is called.
 */
label: string, 
/**
 * Invented content.
 */
demo: boolean, 
/**
 * Whether it has ended.
 */
ended: boolean, 
/**
 * Number of its events.
 */
events: number, 
/**
 * When it was started, by the tablet's clock, in ms since 1970.
 */
started_ms: number, 
/**
 * When its newest event was written, by the tablet's clock, in ms since 1970.
 */
changed_ms: number, };

/**
 * A job as a screen shows it.
 */
export type JobPage = { 
/**
 * The job.
 */
job: JobId, 
/**
 * The newest event: to be named by the next command.
 */
head: Head, 
/**
 * Minutes that the shop's wall clock is ahead of UTC, as the job took it down.
 */
utc_offset_min: number, 
/**
 * The job.
 */
view: JobView, 
/**
 * What was typed and not yet done, by key.
 */
drafts: { [key in string]: string }, };

/**
 * A job as it is to be shown.
 */
export type JobView = { 
/**
 * The number of the newest event: what a command made on this view is based on.
 */
seq: number, 
/**
 * Title of the checklist.
 */
title: string, 
/**
 * Title of the spec sheet.
 */
sheet: string, 
/**
 * Checklist or sheet is invented: "demo values, not for a vehicle" belongs wherever a value shows.
 */
demo: boolean, 
/**
 * Number of the repair order.
 */
repair_order: string, 
/**
 * What the job is called in the list of jobs.
 */
label: string, 
/**
 * How many people may be in steps at a time.
 */
crew: number, 
/**
 * Everybody who appeared in it, under their newest name in it.
 */
people: Array<PersonView>, 
/**
 * Whether the job goes on.
 */
over: Over, 
/**
 * The parts of the job.
 */
phases: Array<PhaseView>, 
/**
 * Every step, in file order.
 */
steps: Array<StepView>, 
/**
 * Every vehicle action.
 */
vehicle_actions: Array<VehicleActionView>, 
/**
 * What is off the vehicle.
 */
tray: Array<TrayView>, 
/**
 * What turned up that the checklist did not foresee.
 */
turned_up: TurnedUpView, 
/**
 * Every kind of part and fastener that this job counts.
 */
items: Array<ItemView>, 
/**
 * How the vehicle is.
 */
conditions: Array<ConditionView>, 
/**
 * What is known.
 */
gates: Array<GateView>, 
/**
 * Every sign-off.
 */
signs: Array<SignView>, 
/**
 * Dangers that hold now. They call people out.
 */
dangers: Array<DangerView>, 
/**
 * Time.
 */
clock: ClockView, 
/**
 * Why the job cannot be finished now.
 */
finish: Refusal | null, 
/**
 * Why the job cannot be stopped now.
 */
stop: Refusal | null, };

/**
 * A torque tool that was kept.
 */
export type KeptTool = { 
/**
 * Which it is.
 */
id: ToolId, 
/**
 * The shop setup with it.
 */
setup: Setup, };

/**
 * How a gate became known.
 */
export type Known = { 
/**
 * Its class.
 */
class: string, 
/**
 * Which event set it.
 */
mark: Mark, 
/**
 * From when on it ages: when the reading that decides it was taken, else when it was set.
 */
from: Stamp, };

/**
 * Words beside a place.
 */
export type Label = { 
/**
 * The place.
 */
at: Spot, 
/**
 * The words.
 */
says: Message, 
/**
 * What they belong to counts.
 */
counts: boolean, };

/**
 * Labor of an estimate.
 */
export type LaborLine = { 
/**
 * The work.
 */
what: string, 
/**
 * Hours, as decimal text.
 */
hours: string, 
/**
 * The price of an hour, as decimal text. Absent: not known yet.
 */
rate?: string | null, };

/**
 * What a backup lacks.
 */
export type LacksPage = { 
/**
 * How many entries that were confirmed; nothing where it can't be told.
 */
entries: number | null, 
/**
 * The jobs of which it lacks entries that can be read.
 */
jobs: Array<JobLacks>, };

/**
 * Where the additions of a level stand.
 */
export type LevelAdded = { 
/**
 * The reading of what was added in all since `before`, as `step.entry`.
 */
volume: string, 
/**
 * The level before anything was added, as `step.entry`. Absent: the first level that was read here.
 */
before: string | null, };

/**
 * A line or curve.
 */
export type Line = { 
/**
 * How it is drawn.
 */
style: LineStyle, 
/**
 * Its places, drawn straight from one to the next.
 */
through: Array<Spot>, };

/**
 * How a line is drawn.
 */
export type LineStyle = "limit" | "curve" | "path";

/**
 * Which event, when, and by whom.
 */
export type Mark = { 
/**
 * The event's number in the job.
 */
seq: number, 
/**
 * When, by both clocks.
 */
stamp: Stamp, 
/**
 * Who.
 */
who: PersonId, 
/**
 * What they were called then.
 */
name: string, };

/**
 * Something that may turn up when the work goes on.
 */
export type MayTurnUpLine = { 
/**
 * What it is.
 */
what: string, 
/**
 * What it costs at most, as decimal text.
 */
up_to: string, };

/**
 * How an answer was given.
 */
export type Means = "in_person" | "telephone" | "written";

/**
 * What runs, and what can be done in the meantime.
 */
export type MeanwhilePage = { 
/**
 * What is waited for, that which is over first before the others.
 */
running: Array<RunningWait>, 
/**
 * Steps that can be taken up, the cheapest first.
 */
can: Array<CanDo>, };

/**
 * Something to say.
 */
export type Message = { 
/**
 * Which message: one of a crate's `MESSAGES`.
 */
id: string, 
/**
 * What to put into it, by name.
 */
args: { [key in string]: Arg }, 
/**
 * The sentence. Empty here: whoever knows the reader's language fills it in.
 */
text?: string, };

/**
 * How far an ohmmeter may be off to both sides, as its manual gives it.
 */
export type MeterError = { 
/**
 * Percent of the reading, as decimal text.
 */
percent: string, 
/**
 * The last digits as a resistance, decimal text: 3 digits of a display with two decimals are `0.03`.
 */
digits: string, };

/**
 * What is missing of one kind.
 */
export type MissingGroup = { 
/**
 * What is said before the names.
 */
says: string, 
/**
 * What is missing.
 */
what: Array<MissingLine>, };

/**
 * One thing that is missing.
 */
export type MissingLine = { 
/**
 * What it is called.
 */
says: string, 
/**
 * Id of the step that it is entered at; nothing for parts that are off.
 */
step: string | null, };

/**
 * A name for rules, with what people read for it.
 */
export type Named = { 
/**
 * Name in predicates.
 */
id: string, 
/**
 * What people read.
 */
label: string, };

/**
 * The state of the tablet when the window opens.
 */
export type Opened = { 
/**
 * What was found wrong with the store.
 */
troubles: Found, 
/**
 * People and tools.
 */
setup: Setup, 
/**
 * Who has a PIN.
 */
pins: Array<PinHolder>, 
/**
 * Where the window was, as the page wrote it under `window`.
 */
window: string | null, 
/**
 * Time can be let pass: this is for looking at a demo job.
 */
demo_clock: boolean, };

/**
 * Whether a job goes on.
 */
export type Over = "going" | "ending" | "finished" | "stopped";

/**
 * A part of an estimate.
 */
export type PartLine = { 
/**
 * What it is.
 */
name: string, 
/**
 * Its part number, as it stands on the label.
 */
number?: string | null, 
/**
 * How many, as decimal text.
 */
quantity: string, 
/**
 * The price of one, as decimal text. Absent: not known yet.
 */
price?: string | null, };

/**
 * How the order of fasteners runs.
 */
export type Pattern = "crosswise" | "star" | "spiral";

/**
 * A person of the shop.
 */
export type Person = { 
/**
 * Stays when the name changes.
 */
id: PersonId, 
/**
 * As [`crate::name::of_person`] gives it.
 */
name: string, 
/**
 * As what they may sign. At least one.
 */
roles: Array<Role>, 
/**
 * Whether they are a lead: a lead makes leads and, with a second person, sets a forgotten PIN anew.
 */
lead: boolean, };

/**
 * A person of the shop. A name is no id: two spellings of one name would be two people, and two people of one
 * name one.
 */
export type PersonId = string;

/**
 * Somebody who appeared in the job.
 */
export type PersonView = { 
/**
 * The person.
 */
id: PersonId, 
/**
 * What they are called.
 */
name: string, };

/**
 * A part of the job.
 */
export type PhaseView = { 
/**
 * Phase id.
 */
id: string, 
/**
 * What the technician reads.
 */
title: string, 
/**
 * Minutes that people were in its steps.
 */
minutes: number, 
/**
 * Minutes that its steps in this job are expected to take.
 */
expected: number, };

/**
 * A photo that was entered.
 */
export type PhotoLine = { 
/**
 * SHA-256 of its bytes.
 */
hash: Hash, 
/**
 * Step id.
 */
step: string, 
/**
 * What the step is called.
 */
step_title: string, 
/**
 * What the control says.
 */
label: string, 
/**
 * What the checklist wants to see on it.
 */
of: string, 
/**
 * Width in pixels.
 */
width: number, 
/**
 * Height in pixels.
 */
height: number, 
/**
 * The entry counts: it was not voided or replaced.
 */
counts: boolean, 
/**
 * Who entered it.
 */
who: string, 
/**
 * On which day.
 */
day: string, 
/**
 * At which time, to the minute.
 */
time: string, };

/**
 * The drawings of parts and fasteners.
 */
export type Piece = "bolt" | "nut" | "screw" | "push_fastener" | "clip" | "strap" | "ring" | "gasket" | "pan" | "filter" | "pipe" | "hanger" | "magnet" | "plate" | "bracket" | "solenoid" | "connector";

/**
 * Pieces that the checklist does not know.
 */
export type PieceView = { 
/**
 * The number of its event.
 */
seq: number, 
/**
 * What they are.
 */
name: string, 
/**
 * How many came off.
 */
count: number, 
/**
 * How many are off.
 */
off: number, 
/**
 * Where they come from.
 */
at: string | null, 
/**
 * Photos of them in their place.
 */
photos: Array<EntryValue>, 
/**
 * Who took them off, and when.
 */
by: Mark, 
/**
 * Why they never were off.
 */
taken_back: Reason | null, };

/**
 * A PIN as it is typed. It is never written anywhere, and printing it for debugging shows nothing of it.
 */
export type Pin = string;

/**
 * By whose word a PIN is set.
 */
export type PinAuthority = { "own": PersonId } | { "lead": ResetBy };

/**
 * That a person has a PIN.
 */
export type PinHolder = { 
/**
 * The person.
 */
person: PersonId, 
/**
 * By whose word it was set.
 */
how: PinSetBy, 
/**
 * The day, as `YYYY-MM-DD`.
 */
on: string, };

/**
 * What became of a PIN that was given.
 */
export type PinReply = { 
/**
 * It is the person's.
 */
right: boolean, 
/**
 * Seconds until the next try counts; 0: it may be tried at once.
 */
wait_s: number, };

/**
 * Who vouched for a new PIN.
 */
export type PinSetBy = "own_first" | "own_by_old" | { "lead_and_second": { 
/**
 * The lead.
 */
lead: PersonId, 
/**
 * The second person: neither the lead nor whose PIN it is.
 */
second: PersonId, } };

/**
 * The kinds of things that are planned.
 */
export type PlanDoes = "work" | "start" | "leave" | "vehicle_action" | "walk" | "sign" | "correct";

/**
 * Something that a person does.
 */
export type PlanDoing = { 
/**
 * Who, from 1.
 */
person: number, 
/**
 * What kind of thing.
 */
does: PlanDoes, 
/**
 * The step's or the vehicle action's id. Nothing for walking.
 */
id: string | null, 
/**
 * What it is called; a walk's zone.
 */
title: string, 
/**
 * Minutes from now when it begins.
 */
from_min: number, 
/**
 * Minutes from now when it is over.
 */
until_min: number, };

/**
 * An order of the work from now on.
 */
export type PlanPage = { 
/**
 * The number of the job's newest event that it was made on; 0 for one made on a checklist alone.
 */
seq: number, 
/**
 * What is done, in the order in which it begins.
 */
doings: Array<PlanDoing>, 
/**
 * What is waited for, in the order in which it begins.
 */
waits: Array<PlanWait>, 
/**
 * Minutes from now to the end.
 */
total_min: number, 
/**
 * No order takes less than so many minutes.
 */
bound_min: number, 
/**
 * No order takes less.
 */
exact: boolean, 
/**
 * It is for more people than the checklist lets be in steps at a time: a plan, not what can be entered so.
 */
plan_only: boolean, 
/**
 * What runs now that is waited for, and what can be done in the meantime. Told for as many people as the checklist lets
 * be in steps at a time, and empty in any other plan: only they can take something up.
 */
meanwhile: MeanwhilePage, };

/**
 * Something that is waited for.
 */
export type PlanWait = { 
/**
 * The step that it belongs to.
 */
step: string, 
/**
 * What is waited for, as said after "waiting for".
 */
what: string, 
/**
 * Minutes from now when it begins.
 */
from_min: number, 
/**
 * Minutes from now when it is over.
 */
until_min: number, 
/**
 * Somebody must stay and watch.
 */
attended: boolean, 
/**
 * Minutes of it in which nobody does anything.
 */
idle_min: number, };

/**
 * A plan, as far as it is found.
 */
export type Planning = { 
/**
 * The order. Nothing where there is none.
 */
page: PlanPage | null, 
/**
 * Why there is none.
 */
none: string | null, 
/**
 * A better one is being looked for: how much of what may be looked at was, in hundred parts. Nothing when the search is
 * over.
 */
searching: number | null, };

/**
 * Values over axes.
 */
export type Plot = { 
/**
 * The axis below.
 */
across: Axis, 
/**
 * The axis on the left.
 */
up: Axis, 
/**
 * What is allowed, or how far a curve may be off.
 */
bands: Array<Band>, 
/**
 * Columns from the axis below.
 */
columns: Array<Column>, 
/**
 * Lines and curves.
 */
lines: Array<Line>, 
/**
 * Readings.
 */
points: Array<Point>, 
/**
 * Words beside readings and lines.
 */
labels: Array<Label>, };

/**
 * A reading.
 */
export type Point = { 
/**
 * Where.
 */
at: Spot, 
/**
 * The lowest and the highest that it may be, where that is known.
 */
between: [number, number] | null, 
/**
 * It counts: it was not replaced, left or voided.
 */
counts: boolean, };

/**
 * What a value would be if it were entered now.
 */
export type Preview = { 
/**
 * The class it would have; nothing where it would be refused.
 */
class: string | null, 
/**
 * It would keep the step in progress.
 */
not_yet: boolean, 
/**
 * What is said about it: what it turned out to be, or why it is no value.
 */
said: Array<Message>, 
/**
 * What is typed in the other unit that is in use for it: a reading, a coil's temperature, a torque.
 */
other: Amount | null, };

/**
 * A surface that was probed.
 */
export type Probed = { 
/**
 * What the probe shows, as decimal text.
 */
value: string, 
/**
 * The unit of both temperatures as text.
 */
unit: string, 
/**
 * With what it was read.
 */
by: ProbedBy, 
/**
 * Temperature of the surroundings as decimal text. Absent: no time can be told, and infrared says nothing.
 */
ambient?: string | null, };

/**
 * With what a surface was read.
 */
export type ProbedBy = "contact" | { "infrared": { 
/**
 * The emissivity that is set on it, as decimal text.
 */
set_to: string, 
/**
 * What the surface is.
 */
surface: ProbedSurface, } };

/**
 * What is probed: a catalyst's core heats its shell again, a joint only cools.
 */
export type ProbedPlace = "joint" | "shell";

/**
 * What a surface is, for an infrared meter.
 */
export type ProbedSurface = "coated" | "oxidised" | "rusty" | "bright";

/**
 * How far a proof is.
 */
export type Proving = { 
/**
 * It is proved and the proof is kept.
 */
proved: boolean, 
/**
 * What is being done.
 */
doing: string, 
/**
 * States found so far in this search.
 */
states: number, 
/**
 * Why it came to nothing.
 */
failed: Trouble | null, };

/**
 * A condition that is asked about when a vehicle comes in.
 */
export type Question = { 
/**
 * Condition id.
 */
condition: string, 
/**
 * In words.
 */
name: string, 
/**
 * What it can be; the first is taken where nothing is answered.
 */
answers: Array<IntakeAnswer>, };

/**
 * A reason that was given, with who and when.
 */
export type Reason = { 
/**
 * Which event.
 */
mark: Mark, 
/**
 * The reason.
 */
text: string, };

/**
 * A record as a screen shows it. Days and times are by the shop's clock.
 */
export type RecordPage = { 
/**
 * How the job ended, or that it is open.
 */
ended: Ended, 
/**
 * When it ended, and by whom; the reason of a stop.
 */
end: EndedBy | null, 
/**
 * The customer's concern.
 */
concern: Array<string>, 
/**
 * Its cause.
 */
cause: Array<string>, 
/**
 * The correction.
 */
correction: Array<string>, 
/**
 * What is missing, by kind.
 */
missing: Array<MissingGroup>, 
/**
 * What was skipped, missed or voided, with the reason.
 */
departures: Array<string>, 
/**
 * What came off and went on again.
 */
tally: Array<TallyLine>, 
/**
 * Every photo that was entered.
 */
photos: Array<PhotoLine>, 
/**
 * Minutes from the start to the end.
 */
minutes: number, 
/**
 * Minutes of unplanned work.
 */
unplanned: number, 
/**
 * Minutes of waiting.
 */
waiting: number, 
/**
 * Events in the journal.
 */
events: number, 
/**
 * Hash of the newest event.
 */
head: Hash, 
/**
 * What comes before anything that a record says.
 */
come_first: string, };

/**
 * Why a command is not fulfilled, and what would have to hold. Not an error.
 */
export type Refusal = { 
/**
 * Why not.
 */
message: Message, 
/**
 * What does not hold or is missing, one by one.
 */
unmet: Array<Message>, };

/**
 * What a screen gets for a command.
 */
export type Reply = { 
/**
 * Why the rules refuse it, said. Nothing: it is on disk.
 */
refused: Refusal | null, 
/**
 * It is refused only until this person has given their PIN.
 */
pin_of: PersonId | null, 
/**
 * The job after it.
 */
page: JobPage, };

/**
 * One command of a person, such as one tap; the same command sent again keeps the same id.
 */
export type RequestId = string;

/**
 * The two who set a PIN for a person who had forgotten theirs.
 */
export type ResetBy = { 
/**
 * Who leads the shop.
 */
lead: PersonId, 
/**
 * Any other person of the shop who has a PIN.
 */
second: PersonId, };

/**
 * What restoring a backup comes to, before it is done and after.
 */
export type RestorePage = { 
/**
 * The backup.
 */
backup: BackupFacts, 
/**
 * What it lacks, held against the store in its place. Nothing: no store stands there.
 */
lacks: LacksPage | null, 
/**
 * Photos that neither of the two has whole, as sentences.
 */
photos_missing: Array<string>, 
/**
 * Where the store is that made room for it; nothing before that.
 */
moved_to: string | null, };

/**
 * Whether a piece that came off may go back on.
 */
export type Reuse = "yes" | "once" | "never";

/**
 * Who signs at a hold point.
 */
export type Role = "technician" | "second_person" | "service_writer";

/**
 * A wait that runs now.
 */
export type RunningWait = { 
/**
 * The step that it belongs to.
 */
step: string, 
/**
 * What is waited for.
 */
what: string, 
/**
 * Minutes until it is over.
 */
left_min: number, };

/**
 * What was saved of a damaged store, and what was not.
 */
export type SalvagedPage = { 
/**
 * The new store.
 */
into: string, 
/**
 * How many entries were saved.
 */
events: number, 
/**
 * About how many jobs and shops.
 */
subjects: number, 
/**
 * How many checklists, sheets and proofs.
 */
documents: number, 
/**
 * How many photos.
 */
photos: number, 
/**
 * What is known not to be saved, as sentences.
 */
not_saved: Array<string>, };

/**
 * Which pages of a record are saved.
 */
export type SavedPages = "record" | "everything" | "customer";

/**
 * Kinds of scanned text.
 */
export type ScanOf = "vin" | "codes" | "text";

/**
 * The shop's people and torque tools, and the device that shows them.
 */
export type Setup = { 
/**
 * Who works here.
 */
people: Array<Person>, 
/**
 * Who worked here before.
 */
left: Array<Person>, 
/**
 * The torque tools with their calibration.
 */
tools: Array<SetupTool>, 
/**
 * Torque tools that were taken off the list, such as one that is away for calibration.
 */
tools_off: Array<SetupTool>, 
/**
 * This device.
 */
device: Device, 
/**
 * By the id of a person, tool or device: the newest events about it that this shows. A change names them, so that
 * one that came meanwhile is noticed.
 */
seen: { [key in string]: Array<Hash> }, 
/**
 * What devices wrote without knowing of each other and somebody has to settle, as sentences.
 */
unsettled: Array<string>, };

/**
 * A torque tool of the shop.
 */
export type SetupTool = { 
/**
 * Stays when its name changes.
 */
id: ToolId, 
/**
 * The tool.
 */
tool: Tool, };

/**
 * One thing that may be found.
 */
export type SeveralOption = { 
/**
 * Short name, unique in its list.
 */
id: string, 
/**
 * What the button says.
 */
label: string, };

/**
 * Whether a sheet must have a value.
 */
export type SheetAsked = "needed" | "useful" | "shop";

/**
 * That a second person compared a value with its source.
 */
export type SheetCheck = { 
/**
 * Who, by name. Somebody else than who entered the value.
 */
by: string, 
/**
 * The same person's id in the shop that checked it, a UUID. Absent where no shop's program did.
 */
by_id?: string | null, 
/**
 * The day, as `YYYY-MM-DD`.
 */
on: string, 
/**
 * They gave their PIN for it.
 */
pin?: boolean, };

/**
 * Who entered a value.
 */
export type SheetEntered = { 
/**
 * Who.
 */
by: string, 
/**
 * The day, as `YYYY-MM-DD`, where it was taken down.
 */
on: string | null, };

/**
 * What a sheet is typed from.
 */
export type SheetFrom = { "checklist": string } | { "copy": string } | { "edit": string };

/**
 * Where values are asked for together, in the order in which service information gives them.
 */
export type SheetGroup = "vehicle" | "fluid" | "counts" | "torques" | "electrical" | "relearn";

/**
 * One sheet in its newest revision.
 */
export type SheetLine = { 
/**
 * Its id.
 */
id: string, 
/**
 * Which vehicles it is for.
 */
title: string, 
/**
 * Its revision.
 */
revision: number, 
/**
 * Invented content.
 */
demo: boolean, 
/**
 * It belongs to the program and is never changed; a copy of it can be.
 */
built_in: boolean, 
/**
 * Number of its values that a second person compares with their sources.
 */
to_check: number, 
/**
 * How many of those a second person has compared.
 */
checked: number, 
/**
 * A change of it is typed and not kept yet.
 */
unfinished: boolean, 
/**
 * Titles of the checklists that it fits.
 */
fits: Array<string>, };

/**
 * What the shop has of spec sheets.
 */
export type SheetList = { 
/**
 * Sheets that a job can be started with, by title.
 */
sheets: Array<SheetLine>, 
/**
 * New sheets that are typed and not kept yet.
 */
unfinished: Array<UnfinishedSheet>, 
/**
 * What a new one can be made for: id and title of each checklist.
 */
checklists: Array<[string, string]>, 
/**
 * Sheets in the store that this version can't read, as sentences.
 */
unreadable: Array<string>, };

/**
 * A spec sheet as it is offered.
 */
export type SheetOffer = { 
/**
 * Its id.
 */
id: string, 
/**
 * Which vehicles it is for.
 */
title: string, 
/**
 * Its revision.
 */
revision: number, 
/**
 * Invented content.
 */
demo: boolean, 
/**
 * A proof of the checklist for its vehicle is kept on this tablet.
 */
proved: boolean, 
/**
 * What the shop has to have a value for before a job can be started with it, as people read it.
 */
shop_lacks: Array<string>, };

/**
 * A sheet as a screen shows it.
 */
export type SheetPage = { 
/**
 * Its values as text.
 */
typed: TypedSheet, 
/**
 * It is being typed and not kept yet; else it is as it was kept.
 */
typing: boolean, 
/**
 * It belongs to the program.
 */
built_in: boolean, 
/**
 * Titles of the checklists that it fits; none while it is typed.
 */
fits: Array<string>, 
/**
 * While it is typed: what it can be made for, id and title of each checklist.
 */
checklists: Array<[string, string]>, 
/**
 * What stands beside the text: what is wrong, who entered what, whose check stands.
 */
view: SheetView, };

/**
 * One value.
 */
export type SheetValueView = { 
/**
 * Its key.
 */
key: string, 
/**
 * What people read for the key.
 */
name: string, 
/**
 * Titles of the steps that read it.
 */
asked_by: Array<string>, 
/**
 * What it is asked for together with.
 */
group: SheetGroup, 
/**
 * Whether a sheet must have it.
 */
asked: SheetAsked, 
/**
 * What is lost without it, where it can be missing.
 */
without: string | null, 
/**
 * A second person compares it with its source.
 */
to_check: boolean, 
/**
 * What can be taken for it by a tap.
 */
offer: TypedIs | null, 
/**
 * For a torque: how many fasteners are counted, which holds where no other number is typed.
 */
fasteners: number | null, 
/**
 * The sheet that it was taken over from as it stands, by title and revision.
 */
taken_from: string | null, 
/**
 * Units it can be typed in, the usual one first. Those of a chart's marks.
 */
units: Array<string>, 
/**
 * Units of a chart's temperatures.
 */
temperature_units: Array<string>, 
/**
 * What a fact can be.
 */
choices: Array<Named>, 
/**
 * The drawing of a chart, where enough of it is typed.
 */
chart: ChartView | null, 
/**
 * The map of a torque's fasteners, where their places are typed and nothing is wrong.
 */
bolts: BoltMap | null, 
/**
 * What is wrong with it, field by field.
 */
problems: Array<FieldProblem>, 
/**
 * Who entered it as it stands, and on which day; nothing where it was changed and is not kept yet.
 */
entered: SheetEntered | null, 
/**
 * A second person's check of it as it stands.
 */
checked: SheetCheck | null, };

/**
 * All that a screen needs beside the typed text.
 */
export type SheetView = { 
/**
 * What is wrong with the title.
 */
title: Message | null, 
/**
 * The values, in the order in which service information gives them; in each group what is needed first.
 */
values: Array<SheetValueView>, };

/**
 * A value that checklists ask of the shop.
 */
export type ShopValue = { 
/**
 * What it is, or what is common practice; blank where no checklist says that.
 */
value: TypedValue, 
/**
 * What stands beside it.
 */
view: SheetValueView, 
/**
 * Who kept it; nothing: the shop has none yet.
 */
kept: SheetEntered | null, 
/**
 * The newest events about it that this shows. A change names them, so that one that came meanwhile is noticed.
 */
seen: Array<Hash>, };

/**
 * How a step is shown.
 */
export type Shown = "undecided" | "not_in_this_job" | "waiting" | "open" | "in_progress" | "done" | "lapsed" | "voided" | "skipped" | "missed";

/**
 * What a signature is for.
 */
export type SignKind = "permit" | "attest";

/**
 * A sign-off.
 */
export type SignView = { 
/**
 * Sign-off id.
 */
id: string, 
/**
 * What is signed.
 */
text: string, 
/**
 * Permit or attest.
 */
kind: SignKind, 
/**
 * Who must sign; nothing: who works the step.
 */
by: Role | null, 
/**
 * The step that gives it.
 */
step: string, 
/**
 * It is valid.
 */
valid: boolean, 
/**
 * The last time it was given, and which event made it lapse. Those with the same one are renewed together.
 */
last: Given | null, 
/**
 * Why it cannot be renewed.
 */
renew: Refusal | null, };

/**
 * Signal words as ANSI Z535.6 and ISO 3864-2 define them, the worst first.
 */
export type Signal = "danger" | "warning" | "caution" | "notice";

/**
 * A signature under one sign-off.
 */
export type Signature = { 
/**
 * Id in the checklist's `sign_offs`.
 */
sign: string, 
/**
 * Who signs.
 */
by: PersonId, 
/**
 * As what they sign.
 */
role: Role, 
/**
 * At a hold point, a sign-off that is asked of a role: what is known of the person's PIN. Absent elsewhere.
 * Whoever checks PINs puts it in; what a command says here counts for nothing.
 */
pin?: SignedPin | null, };

/**
 * What is known of a PIN at a hold point.
 */
export type SignedPin = "no_pin" | "own" | { "set_by": { 
/**
 * Who leads the shop.
 */
lead: PersonId, 
/**
 * The second person, who gave their PIN too.
 */
second: PersonId, } };

/**
 * A place in a drawing.
 */
export type Spot = { 
/**
 * From the left.
 */
x: number, 
/**
 * From below.
 */
y: number, };

/**
 * A stage.
 */
export type StageLine = { 
/**
 * What it is, in a sentence: clicked at what and when, or open.
 */
says: Message, 
/**
 * It was clicked.
 */
clicked: boolean, };

/**
 * When an event was made, by both clocks of the device.
 */
export type Stamp = { 
/**
 * Wall time: milliseconds since 1970-01-01T00:00:00 UTC. It can be set to anything at any time.
 */
wall_ms: number, 
/**
 * Milliseconds since the device booted, **counting sleep** (`CLOCK_BOOTTIME` on Linux and Android). A clock
 * that stops in sleep would show every nap of the tablet as a jump of the wall clock.
 */
mono_ms: number, 
/**
 * Which boot `mono_ms` belongs to.
 */
boot: BootId, };

/**
 * How a supplement stands.
 */
export type Standing = "open" | "below" | "declined" | "agreed" | "without_it" | "taken_back";

/**
 * A step.
 */
export type StepView = { 
/**
 * Its place in the checklist, from 1.
 */
number: number, 
/**
 * Step id.
 */
id: string, 
/**
 * Place of its phase in [`JobView::phases`].
 */
phase: number, 
/**
 * A few words.
 */
title: string, 
/**
 * The one instruction.
 */
instruction: string, 
/**
 * Where the person is.
 */
zone: Zone, 
/**
 * What can hurt.
 */
cautions: Array<Caution>, 
/**
 * Expected minutes.
 */
minutes: number, 
/**
 * How it is shown.
 */
shown: Shown, 
/**
 * In progress and all in: only signatures are missing.
 */
held: boolean, 
/**
 * Why it cannot be begun.
 */
begin: Refusal | null, 
/**
 * In progress only: why it cannot be done, signatures apart.
 */
done: Refusal | null, 
/**
 * Moves that can be made now and would bring what it lacks, by id.
 */
helps: Array<string>, 
/**
 * Why it cannot be skipped.
 */
skip: Refusal | null, 
/**
 * Why it cannot be voided.
 */
void: Refusal | null, 
/**
 * What it asks for.
 */
entries: Array<EntryView>, 
/**
 * Sign-offs to give with *Done*, by id; what each says stands in [`JobView::signs`].
 */
signs: Array<string>, 
/**
 * Sign-offs of it that have lapsed, by id.
 */
lapsed: Array<string>, 
/**
 * When the attempt that is shown began, and by whom.
 */
begun: Mark | null, 
/**
 * When the attempt that is shown was done, and by whom.
 */
ended: Mark | null, 
/**
 * Why it was skipped.
 */
skipped_for: Reason | null, 
/**
 * Why it was last voided.
 */
voided_for: Reason | null, 
/**
 * Why it was missed.
 */
missed_for: Reason | null, };

/**
 * One reading of the stick with the fluid's temperature.
 */
export type StickReading = { 
/**
 * Fluid temperature as decimal text.
 */
temperature: string, 
/**
 * Its unit as text.
 */
temperature_unit: string, 
/**
 * What the stick showed.
 */
stick: StickShows, };

/**
 * What the stick showed.
 */
export type StickShows = { "trace": { 
/**
 * Decimal text, 0 or more.
 */
value: string, 
/**
 * Its unit as text.
 */
unit: string, } } | "no_trace";

/**
 * What the customer was asked about on top of what was agreed to.
 */
export type SupplementView = { 
/**
 * The number of its event.
 */
seq: number, 
/**
 * The step that waits for it, by id.
 */
step: string, 
/**
 * What turned up.
 */
text: string, 
/**
 * Parts and labor.
 */
lines: EstimateLines, 
/**
 * What they come to.
 */
estimate: EstimateView | null, 
/**
 * How it stands.
 */
standing: Standing, 
/**
 * Its step waits for it.
 */
holds_up: boolean, 
/**
 * What is said of it: of the last answer, else of what was asked.
 */
said: Array<Message>, 
/**
 * The last answer.
 */
answer: Authorized | null, 
/**
 * Who asked, and when.
 */
by: Mark, 
/**
 * Why the job goes on without it.
 */
went_on: Reason | null, 
/**
 * Why it no longer counts.
 */
taken_back: Reason | null, };

/**
 * Pieces of one item.
 */
export type TallyLine = { 
/**
 * What it is.
 */
name: string, 
/**
 * Came off the vehicle.
 */
came_off: number, 
/**
 * The same pieces went back.
 */
went_back: number, 
/**
 * New ones went in.
 */
replaced: number, 
/**
 * Are still off.
 */
left: number, };

/**
 * A full step of an axis.
 */
export type Tick = { 
/**
 * Where.
 */
at: number, 
/**
 * What stands there.
 */
says: string, };

/**
 * A torque tool as it stood in the shop's list when it was used.
 */
export type Tool = { 
/**
 * What the shop calls it.
 */
name: string, 
/**
 * Lowest torque it is calibrated for, as decimal text.
 */
min: string, 
/**
 * Highest torque it is calibrated for, as decimal text.
 */
max: string, 
/**
 * The unit of both as text.
 */
unit: string, 
/**
 * How far a click may lie from the setting, in percent of it, as decimal text. Absent: class A of ISO 6789 for
 * its range, as `panside_trade::torque::class_a_deviation_percent` gives it.
 */
class_percent?: string | null, 
/**
 * The day on which it was calibrated, as `YYYY-MM-DD`.
 */
calibrated_on?: string | null, 
/**
 * The number of the calibration's certificate, as it stands there.
 */
certificate?: string | null, 
/**
 * The last day on which its calibration holds, as `YYYY-MM-DD`.
 */
calibration_due: string, };

/**
 * A torque tool, by an id that stays when its name changes.
 */
export type ToolId = string;

/**
 * What is to be said of a tool.
 */
export type ToolView = { 
/**
 * What keeps it from being a tool at all, by the fields of [`Tool`].
 */
problems: Array<FieldProblem>, 
/**
 * That its calibration has ended, so that nothing clicked with it counts.
 */
past: Message | null, 
/**
 * What else there is to say.
 */
notes: Array<Message>, };

/**
 * What the sheet asks for at a torque.
 */
export type TorqueView = { 
/**
 * What the tool is set to, stage by stage.
 */
stages: Array<Amount>, 
/**
 * What each fastener is turned by after the last stage.
 */
angle: AngleView | null, };

/**
 * A kind of part or fastener that is off the vehicle.
 */
export type TrayView = { 
/**
 * Item id.
 */
id: string, 
/**
 * What it is.
 */
name: string, 
/**
 * Pieces that are off.
 */
off: number, 
/**
 * Pieces there are on the vehicle.
 */
count: number, 
/**
 * Whether the same piece may go back.
 */
reuse: Reuse, 
/**
 * How it is drawn; nothing: in a form that fits anything.
 */
draws: Piece | null, 
/**
 * The count made anew from the events comes to the same.
 */
recount_agrees: boolean, };

/**
 * A failure. The page shows `message`; it chooses what to offer by `kind`.
 */
export type Trouble = { 
/**
 * What to offer.
 */
kind: TroubleKind, 
/**
 * What happened and what the person can do, in sentences.
 */
message: string, 
/**
 * Whose PIN has to be given first, where that is all.
 */
pin_of: PersonId | null, };

/**
 * What can be offered after a failure.
 */
export type TroubleKind = "stale" | "refused" | "photo" | "store" | "locked" | "pin" | "other";

/**
 * What turned up, oldest first.
 */
export type TurnedUpView = { 
/**
 * What was found.
 */
found: Array<FoundView>, 
/**
 * What the customer was asked about.
 */
asked: Array<SupplementView>, 
/**
 * Pieces that the checklist does not know.
 */
pieces: Array<PieceView>, 
/**
 * The step that a question asked now would hold up: the one in progress, else the first that is open. Nothing:
 * nothing can wait for an answer.
 */
asks_at: string | null, 
/**
 * Codes of the currencies that an amount may be typed in, the usual one first.
 */
currencies: Array<string>, };

/**
 * An angle stage while it is typed, in degrees.
 */
export type TypedAngle = { 
/**
 * How far to turn.
 */
degrees: string, 
/**
 * How far that may be off to both sides.
 */
tolerance: string, };

/**
 * One coil of a list while it is typed.
 */
export type TypedCoil = { 
/**
 * What its solenoid is called.
 */
name: string, 
/**
 * Between which terminals it is measured; may be empty.
 */
terminals: string, 
/**
 * Lowest resistance.
 */
min: string, 
/**
 * Highest resistance.
 */
max: string, };

/**
 * The kinds of value as they are typed.
 */
export type TypedIs = { "measure": { 
/**
 * The number.
 */
value: string, 
/**
 * Its unit.
 */
unit: string, } } | { "range": { 
/**
 * The lower one.
 */
min: string, 
/**
 * The higher one.
 */
max: string, 
/**
 * Unit of both.
 */
unit: string, } } | { "chart": { 
/**
 * Unit of the temperatures.
 */
temperature_unit: string, 
/**
 * Unit of the marks and of the agreement.
 */
length_unit: string, 
/**
 * The points, in any order.
 */
points: Array<TypedPoint>, 
/**
 * How far two readings may differ and still agree; empty: it is not known.
 */
agreement: string, } } | { "torque": { 
/**
 * How many fasteners.
 */
fasteners: string, 
/**
 * Target of each stage, in order.
 */
stages: Array<string>, 
/**
 * Unit of the stages.
 */
unit: string, 
/**
 * How far a setting may be off, in percent of the target.
 */
tolerance_percent: string, 
/**
 * Where each fastener sits, in millimetres; none: no map of them is drawn.
 */
positions: Array<TypedPosition>, 
/**
 * How the order runs over them.
 */
pattern: Pattern, 
/**
 * The angle that each fastener is turned after the last stage, where there is one.
 */
angle?: TypedAngle | null, } } | { "coils": { 
/**
 * Unit of all limits.
 */
unit: string, 
/**
 * The coils in the order in which they are measured.
 */
coils: Array<TypedCoil>, } } | { "count": string } | { "fact": string } | { "text": string };

/**
 * A person as typed.
 */
export type TypedPerson = { 
/**
 * Whom it changes or puts back on the list; nothing for somebody new.
 */
id: PersonId | null, 
/**
 * What [`Setup::seen`] has of them; nothing for somebody new.
 */
seen: Array<Hash>, 
/**
 * What they are called.
 */
name: string, 
/**
 * What they are.
 */
roles: Array<Role>, 
/**
 * They lead the shop.
 */
lead: boolean, };

/**
 * One temperature of a level chart while it is typed.
 */
export type TypedPoint = { 
/**
 * Fluid temperature.
 */
at: string, 
/**
 * Low mark.
 */
low: string, 
/**
 * High mark.
 */
high: string, };

/**
 * Where a fastener sits while it is typed, in millimetres.
 */
export type TypedPosition = { 
/**
 * To the right.
 */
x: string, 
/**
 * Upwards.
 */
y: string, 
/**
 * What is different about it.
 */
note: string, };

/**
 * A spec sheet while it is typed.
 */
export type TypedSheet = { 
/**
 * Under which name the draft is kept: the sheet's id, or a name of its own for a sheet that has none yet.
 */
draft: string, 
/**
 * The sheet that is edited; nothing: a new one.
 */
id: string | null, 
/**
 * The revision that is edited; 0 for a new one.
 */
revision: number, 
/**
 * The content of the revision that is edited.
 */
made_from: Hash | null, 
/**
 * The shop's newest events about the sheet when its editing began: a change that came meanwhile is noticed.
 */
seen: Array<Hash>, 
/**
 * The checklist that it is made for.
 */
checklist: string, 
/**
 * Which vehicles it is for.
 */
title: string, 
/**
 * Invented values, also when only copied from some.
 */
demo: boolean, 
/**
 * Where the values come from that name no source of their own.
 */
source: string, 
/**
 * The values by key.
 */
values: { [key in string]: TypedValue }, };

/**
 * A value as typed for the shop.
 */
export type TypedShopValue = { 
/**
 * Its key on spec sheets.
 */
key: string, 
/**
 * What [`ShopValue::seen`] has of it.
 */
seen: Array<Hash>, 
/**
 * What it is, with where it comes from.
 */
value: TypedValue, };

/**
 * A value as it was taken over from another sheet. It is so until the value or its source is another one.
 */
export type TypedTaken = { 
/**
 * That sheet's title and revision.
 */
from: string, 
/**
 * What it was.
 */
is: TypedIs, 
/**
 * Where it came from.
 */
source: string, };

/**
 * A torque tool as typed.
 */
export type TypedTool = { 
/**
 * Which tool it changes or puts back on the list; nothing for a new one.
 */
id: ToolId | null, 
/**
 * What [`Setup::seen`] has of it; nothing for a new one.
 */
seen: Array<Hash>, 
/**
 * The tool.
 */
tool: Tool, };

/**
 * One value while it is typed.
 */
export type TypedValue = { 
/**
 * What it is.
 */
is: TypedIs, 
/**
 * Where it comes from; empty: from where the sheet as a whole does.
 */
source: string, 
/**
 * What was taken over from another sheet.
 */
taken?: TypedTaken | null, };

/**
 * A new sheet that is not kept yet.
 */
export type UnfinishedSheet = { 
/**
 * The draft's name.
 */
draft: string, 
/**
 * Its title so far.
 */
title: string, };

/**
 * What has to be done about something that was found.
 */
export type Urgency = "now" | "soon" | "tell";

/**
 * A vehicle action.
 */
export type VehicleActionView = { 
/**
 * Vehicle action id.
 */
id: string, 
/**
 * What the button says.
 */
title: string, 
/**
 * Expected minutes.
 */
minutes: number, 
/**
 * Why it cannot be made.
 */
refusal: Refusal | null, 
/**
 * Sign-offs it would make lapse, by id.
 */
lapses: Array<string>, 
/**
 * What would no longer be known, by gate id.
 */
forgets: Array<string>, };

/**
 * Where a person is while a step is worked.
 */
export type Zone = "under" | "engine_bay" | "cabin" | "bench";
