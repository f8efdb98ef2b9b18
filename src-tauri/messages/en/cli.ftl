# What `panside-cli` says. Names of commands, options, figures and keys, and examples of values, are typed as they stand and so
# are the same in every language; so are ids of steps, entries and other things of a checklist, and paths.

## How the program ends

# $problems: each on a line of its own
cli-does-not-load = The file { $file } does not load:{ $problems }
# $problems: lacks-*, each on a line of its own
cli-sheet-lacks = The spec sheet does not fit the checklist:{ $problems }
# $why: what the system said
cli-not-printed = What was to be printed did not all arrive: { $why }. Make room or print to another place, then repeat.
# $trouble: a sentence
cli-trouble = TROUBLE: { $trouble }
# $troubles: cli-trouble, each on a line of its own
cli-nothing-printed = Nothing is printed; --even-so prints what can be read.{ $troubles }

## The shop's own checklists

# $id: its id; $name: name of a person
cli-own-adopted = { $name } adopts the checklist "{ $id }", revision { $revision }. Jobs can be started with it now.
cli-own-row = { $id }, revision { $revision }: { $title }
# $row: cli-own-row
cli-own-taken-in = { $row } (taken in, not adopted yet)
# $trouble: a sentence
cli-own-trouble = Can't be used: { $trouble }
# $name: as typed
cli-own-nobody = Nobody of this shop is called "{ $name }". Type the name as it stands in the shop's list.
cli-own-written = The checklist was written to { $file }.

## What is wrong with a walk script

# $what: one of those that follow
cli-script = The script { $file }: { $what }
# $said: what the JSON decoder said
cli-script-json = { $said }
cli-script-format = the format is "{ $found }"; "{ $wanted }" is read here
# $person: the short name of a person
cli-script-no-role = "{ $person }" in "people" has no role; give at least one
cli-script-line = line { $line }: { $what }
# $words: as they stand in the line
cli-script-nothing = nothing that was found, asked or taken off is called "{ $words }"
cli-script-nobody = nobody in "people" is called "{ $person }"
cli-script-minutes = after_min must be from 0 to 10080 minutes
# $command: as it stands in the script; $said: what the JSON decoder said
cli-script-no-command = { $command } is no command: { $said }
cli-script-no-who = The first line of the script must say "who".
# $photo: its name in the script
cli-script-no-photo = The script takes the photo "{ $photo }": give a file with --photo FILE.
# $time: as typed
cli-no-time = "{ $time }" is no time; write it like 2026-03-02T08:00:00Z.

## A walk

# $title: the script's title
cli-walk-job = Job { $job }: { $repair_order }, { $title }
cli-walk-demo = Demo values, not for a vehicle.
# $line: number of the newest one
cli-walk-goes-on = Lines 1 to { $line } are in the journal already.
# $sentences: why it is refused, and what is missing
cli-walk-refused = refused, as expected: { $sentences }
# $command: cli-to-*; $refusal, $expected: ids of messages
cli-walk-not-expected = Line { $line }: { $command } is refused ({ $refusal }). { $sentences }
cli-walk-other-refusal = Line { $line }: { $command } is refused with "{ $refusal }", though "{ $expected }" was expected. { $sentences }
cli-walk-taken = Line { $line }: { $command } was taken, though "{ $expected }" was expected.

## What happened on a job
#
# It follows a person's name, so it begins small.

cli-event-started = starts with { $checklist } revision { $revision }
cli-event-introduced = names { $name }, { $role ->
        [service_writer] service writer
        [second_person] second person
       *[technician] technician
    }
# $step: cli-step
cli-event-begun = begins { $step }
cli-event-left = leaves { $step }
# $value: what was entered, in few words; $class: what it turned out to be
cli-event-entered = enters { $entry }: { $value } -> { $class }
cli-event-done = done { $step }
# $signs: cli-signed-by, more of them joined by cli-next
cli-event-done-signed = done { $step }, signed: { $signs }
cli-event-vehicle-action = vehicle action: { $action }
cli-event-signed = signs { $sign } again
cli-event-skipped = skips { $step }: { $reason }
cli-event-voided = voids { $step }: { $reason }
# $also: ids of steps
cli-event-voided-also = voids { $step }, and with it { $also }: { $reason }
cli-event-corrected = corrects { $step }
cli-event-observed = observes { $condition } = { $value }: { $reason }
# $undone: ids of steps
cli-event-observed-undone = observes { $condition } = { $value }, so not worked: { $undone }: { $reason }
cli-event-expired = { $gate } has grown too old
cli-event-explained = explains { $step }: { $reason }
# $what: as typed; $urgency: now, soon or tell; $photos: how many
cli-event-found = found: { $what } ({ $urgency ->
    [now] to be dealt with in this job
    [soon] recommended
   *[tell] the customer is told
}{ $photos ->
    [0] {""}
    [one] , 1 photo
   *[other] , { $photos } photos
})
# $number: of the event that it was found with
cli-event-dealt-with = what was found with { $number } is dealt with: { $text }
# $what: as typed; $step: cli-step
cli-event-asked = asks the customer about { $what }, at { $step }
# $number: of the event that asked; $class: agreed, below, declined or pending
cli-event-answered = the customer's answer to { $number }: { $class }
# $number: of the event that asked
cli-event-went-on = goes on without { $number }: { $reason }
# $piece: as typed; $count: how many
cli-event-piece-off = takes off what is not in the checklist: { $piece }, { $count }
# $number: of the event that it came off with; $count: how many
cli-event-piece-back = puts back { $count } of { $number }
# $number: of the event that it came off with; $count: how many
cli-event-piece-gone = { $count } of { $number } does not come back: { $reason }
# $number: of the event
cli-event-taken-back = takes back { $number }: { $reason }
cli-event-finished = the job is finished
cli-event-stopped = the job is stopped: { $reason }
cli-event-clock = the wall clock was set by { $seconds } s
# $event: one of those above; $names: ids of sign-offs and gates
cli-event-lapses = { $event } [lapses: { $names }]
cli-step = { $title } ({ $id })
cli-signed-by = { $sign } by { $name }
cli-next = { $start }, { $next }
# $value: another of these, or a value with its unit
cli-value-because = { $value } ({ $reason })
cli-value-signed = signed by { $name }
# $stages: numbers, more of them joined by cli-value-then
cli-value-torque = { $stages } { $unit } with { $tool }
cli-value-then = { $start }, then { $next }
# $hash: how its hash begins
cli-value-photo = photo { $width } x { $height }, { $hash }

## What is asked for
#
# It stands within cli-walk-*.

cli-to-begin = to begin "{ $step }"
cli-to-leave = to leave "{ $step }"
cli-to-enter = to enter "{ $entry }" at "{ $step }"
cli-to-be-done = to be done with "{ $step }"
cli-to-work = to work "{ $step }"
cli-to-act = the vehicle action "{ $action }"
cli-to-sign = to sign "{ $sign }"
cli-to-sign-again = to sign again
cli-to-skip = to skip "{ $step }"
cli-to-void = to void "{ $step }"
cli-to-correct = to correct "{ $step }" afterwards
cli-to-observe = to observe { $condition } = { $value }
cli-to-explain = to explain "{ $step }"
# $what: as typed
cli-to-find = to take down what was found: "{ $what }"
# $number: of the event that it was found with
cli-to-deal-with = to deal with { $number }
# $what: as typed
cli-to-ask = to ask the customer about "{ $what }"
# $number: of the event that asked
cli-to-answer = to enter the answer to { $number }
# $number: of the event that asked
cli-to-go-on = to go on without { $number }
# $piece: as typed
cli-to-take-off = to take off "{ $piece }"
# $number: of the event that it came off with
cli-to-put-back = to put back { $number }
# $number: of the event
cli-to-take-back = to take back { $number }
cli-to-finish = to finish the job
cli-to-stop = to stop the job

## A proof

# $rate: states for each second
cli-proof-meter = { $seconds } s  { $states } states ({ $rate }/s)
# $search: procedure-progress
cli-proof-meter-search = { $search }, { $states } states, { $waiting } waiting
# $engine: name and number of what proves
cli-proof-of = Checklist { $checklist }, revision { $revision } ({ $engine })
# $runs: procedure-runs-*; $memory: how many MiB
cli-proof-search = { $runs }: { $states } states, { $transitions } transitions, depth { $depth }, { $memory } MiB
# $search: cli-proof-search
cli-proof-memory = { $search } - memory cap reached, not searched to the end
cli-proof-states = { $search } - states cap reached, not searched to the end
cli-proof-cancelled = { $search } - ended before its end
# Each of these stands before a claim
cli-proof-holds = holds
cli-proof-fails = FAILS
cli-proof-open = not decided
# $place: spot or spot-in-file, or a place in the file
cli-proof-at = at { $place }
# $fix: fix-*
cli-proof-close = To close it: { $fix }.
# $what: remark-*
cli-proof-odd = Odd, though it refutes nothing: { $what }
cli-proof-finish = After one observation, can the job still finish?
# $can: one of those that follow
cli-proof-finish-row = { $condition } = { $value }: { $can }
cli-proof-always = always
cli-proof-never = never: stop and call
cli-proof-sometimes = in { $can } of { $places } places, else stop and call
# Each on a line of its own below
cli-proof-assumed = Assumed:
cli-proof-not-claimed = Not claimed:
cli-proved = Proved over { $states } states.
cli-refuted =
    { $findings ->
        [one] Refuted: { $findings } finding.
       *[other] Refuted: { $findings } findings.
    }
cli-not-decided = Not decided: ran to { $states } states. It counts as not proved; --mem and --states give a search more room.

## A plan

cli-plan-of-what = Say which checklist, or a store and its job.
cli-plan-no-start = No vehicle may come in like that.
# $from, $until: minutes; $what: a step's title or one of those that follow
cli-plan-row = { $from } to { $until } min  { $what }
# $person: a number
cli-plan-row-person = { $from } to { $until } min  person { $person }  { $what }
cli-plan-start = start, then leave it: { $title }
cli-plan-leave = leave: { $title }
cli-plan-action = -> { $title }
# $zone: bay-zone
cli-plan-walk = { "   " }go to { $zone }
cli-plan-sign = sign again: { $title }
cli-plan-correct = corrected afterwards: { $title }
# $what: as the checklist says it; $meanwhile: one of those that follow
cli-plan-wait = waiting for { $what }, { $from } to { $until } min: { $meanwhile }
cli-plan-attended = somebody stays and watches
cli-plan-other-work = other work meanwhile all the time
cli-plan-idle = other work meanwhile but for { $minutes } min
cli-plan-running = now waiting for { $what }: { $minutes } min left
# $costs: one of those that follow
cli-plan-can = meanwhile: { $step } ({ $minutes } min), { $costs }
cli-plan-no-time = costs no time
cli-plan-longer = makes the job { $minutes } min longer
cli-plan-no-way = no way to the end was found after it
cli-plan-as-far = { $costs }, as far as was searched
cli-plan-only = Plan only: this checklist has one person in a step at a time.
cli-plan-exact = { $minutes } min in all. No order takes less.
cli-plan-bound = { $minutes } min in all. No order takes less than { $bound } min: this one may be up to { $longer } min longer than the best.
cli-plan-file-order = The order of the file takes { $minutes } min.

## Jobs and records

# $state: open or ended
cli-job-row = { $events } events  { $state ->
        [ended] ended
       *[open] open
    }
# $row: cli-job-row
cli-job-demo = { $row }  demo
# $job: as typed
cli-no-job-id = "{ $job }" is no job id; `panside-cli jobs` lists them.
cli-record-form = A record cannot be written to { $file }: the file's ending says the form, .json, .txt or .pdf.
cli-record-customer = The customer's copy has no data form: take .txt or .pdf.
cli-record-in = The record is in { $file }.
cli-tables-in = Parts, labor and measurements are in { $folder }.

## A store

cli-store-holds = { $events } events, { $photos } photos and { $documents } documents hold.
cli-store-newest = Newest event: { $seq } ({ $hash })
cli-store-rebuilt = The list of { $jobs } jobs is made anew from the journal.
cli-store-swept = { $photos } photo files that no entry names are taken away.
# $copied: how many of the photos
cli-backed-up = Backed up and verified: { $events } events and { $photos } photos, { $copied } of them new. { $folder }
cli-backup-removed = Taken away, older: { $folder }
# $trouble: a sentence
cli-backup-lacks = NOT BACKED UP: { $trouble }
# $why: what the system said
cli-backup-no-folder = The folder { $folder } cannot be found: { $why }.
cli-backup-none = There is no backup in { $folder }.
# $why: a sentence
cli-backup-bad = NOT A GOOD BACKUP: { $why }
# $age: bay-age-*; $seq: number of the newest entry
cli-backup-is = { $age }, newest entry { $seq } of device { $device }, { $events } events, { $photos } photos
cli-backup-verified = verified
cli-backup-not-whole = lacks { $count } photos or texts that the store itself no longer had whole
# Kept in the journal, where nobody said why
cli-restored-why = restored from a backup
cli-restored = Restored into { $folder }: the backup made { $age }, up to entry { $seq }. A new epoch has begun.
cli-restored-aside = The store that was there is kept, with its records and sheets: { $folder }
cli-restored-all = The backup has every entry that was confirmed there.
cli-restored-lacks = The backup lacks the newest { $entries } entries that were confirmed there.
cli-restored-unknown = It is not known how many entries the backup lacks: not everything there can be read, or it is another device's.
# $called: what the job or the shop is called
cli-restored-newer = { $called }: { $restored } entries restored; { $there } can be read there, { $lacking } of them not restored
cli-restored-salvage = What can be read there is saved by `store salvage`.
# $trouble: a sentence
cli-restored-missing = MISSING: { $trouble }
# $trouble: a sentence
cli-gone-on-was = Was: { $trouble }
cli-gone-on = A new epoch has begun; the store takes entries.

## A new checklist

cli-new-written = The checklist { $file } is written. Change it, and see what still holds: panside-cli prove { $file }
# $ending: how the file's name ends
cli-new-name = "{ $file }" is no name for a checklist: write it in lower-case letters, digits and hyphens, and end it in { $ending }.

## The figures that are listed

cli-values = A value is written with its unit and no space: temp=46C reading=31mm torque=9lbf.ft. A comma or a point is the decimal sign. Parts of one value are joined by a colon.
# $is: what the key is
cli-perhaps = { $is } (may be left out)
# $is: what the key is
cli-often = { $is } (once or more)
# $is: what the key is
cli-perhaps-often = { $is } (as often as there are)

## Keys of several figures

cli-key-reading = what the stick shows, with its own temperature and time if need be, 31mm or 31mm:46C or 31mm:46C:12min; dry, or dry-confirmed after a second look
cli-key-mark = a row of the chart: temperature, low and high mark, 40C:12mm:22mm; else --sheet
cli-key-temp = fluid temperature of the readings, 46C
cli-key-chart = the chart's key on the sheet, level_chart
cli-key-agree = how far readings may differ, 2mm
cli-key-floor = level floor, yes or no
cli-key-idle = engine idling, yes or no
cli-key-park = in park, yes or no
cli-key-cycled = ranges cycled, yes or no
cli-key-started = when the engine was started, 5min
cli-key-changed = when fluid was last added or drained, 10min
cli-key-now = now, 15min
cli-key-addition = what was added with the height above the low mark before and after, 0.5L:-8mm:-1mm
cli-key-tool = the tool's range, 5Nm:25Nm
cli-key-class = how far it may be off, 4%; else by ISO 6789 class A
cli-key-due = last day of its calibration, 2026-06-30
cli-key-calibrated = instead: the day it was calibrated, 2025-06-30
cli-key-months = months between calibrations, 12
cli-key-on = the day it is used, 2026-05-04
cli-key-ambient = temperature of the surroundings, 22C

## Keys of the figure "level"

cli-level = where the fluid level stands at its temperature

## Keys of the figure "diagnosis"

cli-diagnosis = whether the symptom may be judged yet
cli-diagnosis-level = a time and where the level stood, 10min:below, in, above or unclear
cli-diagnosis-tried = a time and what a try of the concern showed, 20min:shows or gone

## Keys of the figure "topup"

cli-topup = how much to pour in after a reading
cli-topup-gain = rise for each litre, 15mm/L
cli-topup-share = share of the estimate to pour, 80%
cli-topup-pour = the most at once, 0.5L

## Keys of the figure "gain"

cli-gain = rise of the level for each litre, learnt from additions

## Keys of the figure "refill"

cli-refill = how much to pour in first after a drain
cli-refill-drained = what came out and its temperature, 4.2L:45C
cli-refill-poured = temperature of the new fluid, 20C
cli-refill-density = its density at 15 °C, 850kg/m3
cli-refill-holdback = what to stay short by, 0.3L
cli-refill-temp = fluid temperature of those readings at intake, 46C
cli-refill-gain = rise for each litre, 15mm/L; needed with readings

## Keys of the figure "balance"

cli-balance = what was drained against what went in, at 15 °C, with the uncertainty of the difference
cli-balance-drained = a volume, how far it may be off, its temperature and how far that may be off, 4.2L:0.05L:45C:2K
cli-balance-added = the same of what went in, 4.0L:0.02L:20C:2K
cli-balance-density = density at 15 °C and how far it may be off, 850kg/m3:10kg/m3
cli-balance-unseen = what may be lost unseen, 0.1L
cli-balance-capacity = what the transmission holds, 7L

## Keys of the figure "coil"

cli-coil = a coil's resistance at the temperature of its limits, with the meter's error
cli-coil-ohms = what the meter shows, 6.9ohm, or OL for overload
cli-coil-temp = the coil's temperature, 62C
cli-coil-tempoff = how far that may be off, 2K
cli-coil-leads = what the leads alone have, 0.2ohm
cli-coil-meter = the meter's error: percent of the reading and last digits, 0.5%:0.02ohm
cli-coil-limits = lower and upper limit, 5.0ohm:5.6ohm; else the name of a coil or the key of a range on the sheet
cli-coil-at = the temperature of the limits, 20C

## Keys of the figure "code"

cli-code = trouble codes by their structure
cli-code-codes = codes with commas between them, P0765,U0100
cli-code-bytes = instead: the bytes of an answer, 43:01:07:65

## Keys of the figure "vin"

cli-vin = a vehicle identification number: check digit, model year, what it may be misread from
cli-vin-vin = the number, 17 characters

## Keys of the figure "torque"

cli-torque = whether a click counts: tolerance, tool, guard band, mixed-up unit
cli-torque-torque = the setting that clicked, 9Nm or 80lbf.in
cli-torque-target = the torque that is wanted, 9Nm
cli-torque-tolerance = its tolerance to both sides, 10%
cli-torque-spec = instead of both: a key on the sheet, pan_bolt_torque
cli-torque-stage = which stage of the sheet's torque, 2

## Keys of the figure "tool"

cli-tool = whether a tool may be used for a setting on a day
cli-tool-setting = the setting that is wanted, 9Nm

## Keys of the figure "adapter"

cli-adapter = what to set on a tool with an adapter
cli-adapter-torque = the torque that is wanted at the bolt, 30lbf.ft
cli-adapter-tool = the tool's length from grip to drive, 12in
cli-adapter-adapter = the adapter's length from drive to bolt, 6in
cli-adapter-angle = angle between them: 0deg straight on, 90deg square, 180deg back

## Keys of the figure "angle"

cli-angle = a stage that is turned by an angle
cli-angle-target = the angle and its tolerance to both sides, 90deg:5deg
cli-angle-turned = what was turned, 88deg

## Keys of the figure "bolt"

cli-bolt = whether a torque makes sense for thread and grade
cli-bolt-torque = the torque, 9Nm
cli-bolt-thread = the thread, M6 or M8x1
cli-bolt-grade = the grade on the head, 8.8, 10.9 or 12.9

## Keys of the figure "order"

cli-order = the order of a cover's bolts, and the next one
cli-order-pattern = star for a ring, crosswise for a pan, spiral for a plate
cli-order-bolt = a bolt and where it sits, A:0mm:60mm
cli-order-done = a bolt that is done in this stage, A

## Keys of the figure "cooldown"

cli-cooldown = how a hot part cools, and the time before which it is not at its touch limit
cli-cooldown-reading = a time and what the contact probe shows, 0min:180C
cli-cooldown-ambientoff = how far that may be off or change, 2K
cli-cooldown-limit = the touch limit, 48C; else touch_limit_bare_metal of the sheet
cli-cooldown-probe = how far the probe may be off, 1K
cli-cooldown-off = when the engine was last switched off, 0min
cli-cooldown-place = joint or shell

## Keys of the figure "touch"

cli-touch = how hot a surface may be to be touched
cli-touch-contact = how long it is touched, 10min or 5s
cli-touch-gloves = level against contact heat that is printed on them, 1 to 4

## Keys of the figure "surface"

cli-surface = the true temperature of a surface that was read by infrared
cli-surface-shows = what the meter shows, 60C
cli-surface-set = the emissivity that is set on it, 0.95
cli-surface-surface = coated, oxidised, rusty or bright
cli-surface-emissivity = instead: the surface's lowest and highest emissivity, 0.8:0.9

## Keys of the figure "labour"

cli-labour = time by phase, waiting and unplanned time apart, in tenths of an hour
cli-labour-event = a time and what was clocked, 0min:on:drain, 20min:on:drain:waiting:cooling, 40min:on:drain:unplanned:seized nut or 50min:off
cli-labour-until = until when it is counted if still clocked on, 60min
cli-labour-expected = what was expected in all, 45min

## Keys of the figure "estimate"

cli-estimate = what parts and labor come to before tax, and with what may turn up
cli-estimate-currency = the currency of every amount, USD
cli-estimate-part = a part, how many and the price of one, filter:1:48.90
cli-estimate-labor = work, hours and the rate, pan:1.25:95
cli-estimate-may-turn-up = what may turn up and what it costs at most, nut:60
cli-estimate-line-form = write it as name:quantity:price
cli-estimate-up-to-form = write it as name:at most

## What is wrong with what was typed for a figure

# $why: one of those that follow; $lines: the keys of the figure, each on a line of its own
cli-usage = { $why }{ $lines }
# $key: the key; $text: its value; $why: what is wrong, a sentence
cli-wrong = In { $key }={ $text }: { $why }
# $name: as typed; $known: the names of the figures
cli-no-figure = There is no figure "{ $name }". Choose one of: { $known }.
# $text: as typed
cli-no-key-value = "{ $text }" is no key=value.
# $figure: its name; $key: as typed
cli-no-key = The figure { $figure } has no key "{ $key }".
# $figure: its name; $key: the key
cli-needs = The figure { $figure } needs { $key }=…
# $key: the key; $count: how often, more than once
cli-more-than-once = The key { $key }=… is given { $count } times; give it once.
cli-yes-or-no = write yes or no.
# $example: the number with a unit behind it
cli-unit-missing = the unit is missing. Write it behind the number, such as { $example }.
cli-whole-number = write a whole number.
cli-day-form = write a day as year-month-day, such as 2026-06-30.
cli-gain-form = write a length for each litre, such as 15mm/L.
cli-bytes-form = write two hexadecimal digits a byte, such as 43:01:07:65.
cli-event-form = write time:on:phase, time:on:phase:waiting:reason, time:on:phase:unplanned:reason or time:off.
cli-form-mark = write it as temperature:low:high, such as 40C:12mm:22mm.
cli-form-level = write it as time:class, such as 10min:below.
cli-form-tried = write it as time:symptom, such as 20min:shows.
cli-form-addition = write it as volume:before:after, such as 0.5L:-8mm:-1mm.
cli-form-drained = write it as volume:temperature, such as 4.2L:45C.
cli-form-amount = write it as volume:off by:temperature:off by, such as 4.2L:0.05L:45C:2K.
cli-form-density = write it as density:off by, such as 850kg/m3:10kg/m3.
cli-form-limits = write it as lowest:highest, such as 5.0ohm:5.6ohm.
cli-form-meter = write it as percent:digits, such as 0.5%:0.02ohm.
cli-form-tool = write it as lowest:highest, such as 5Nm:25Nm.
cli-form-target = write it as angle:tolerance, such as 90deg:5deg.
cli-form-bolt = write it as name:right:up, such as A:0mm:60mm.
cli-form-reading = write it as time:temperature, such as 10min:140C.
cli-form-emissivity = write it as lowest:highest, such as 0.8:0.9.
cli-level-words = the level is below, in, above or unclear.
cli-tried-words = the symptom shows or is gone.
cli-pattern-words = it is star, crosswise or spiral.
cli-place-words = it is joint or shell.
cli-surface-words = it is coated, oxidised, rusty or bright.
# $count: how many stages the torque of the sheet has
cli-stages =
    { $count ->
        [one] it has one stage.
       *[other] it has { $count } stages.
    }
cli-temp-missing = The temperature is missing: give temp=…, or each reading its own.
cli-gain-missing = The rise for each litre is missing: give gain=…, such as gain=15mm/L.
cli-tolerance-missing = The tolerance is missing: give tolerance=…
cli-spec-missing = The torque that is wanted is missing: give target=… and tolerance=…, or spec=… with --sheet FILE.
cli-chart-missing = The chart is missing: give mark=… twice or more, or --sheet FILE.
cli-limits-missing = The limits are missing: give limits=5.0ohm:5.6ohm, or --sheet FILE and limits=NAME of a coil on it.
cli-touch-limit-missing = The touch limit is missing: give limit=48C, or --sheet FILE.
cli-codes-or-bytes = Give either codes=P0765,U0100 or bytes=43:01:07:65.
cli-due-or-calibrated = Give either due=2026-06-30 or calibrated=2025-06-30.
cli-surface-or-emissivity = Give either surface=coated or emissivity=0.8:0.9.
# $key: as typed
cli-no-chart = The sheet has no level chart "{ $key }".
# $key: as typed
cli-no-range = The sheet has no coil and no range "{ $key }".
# $key: as typed
cli-no-torque = There is no sheet with the torque "{ $key }".
# $key: the key
cli-no-value = The sheet has no value "{ $key }".
