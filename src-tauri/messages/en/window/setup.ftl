# What the shop has: people, torque wrenches, spec sheets; and how large the screen is.
screens-setup = Shop setup
screens-setup-people = People
screens-setup-values = Shop values
screens-value-none = Not set yet
screens-value-offered = Not set yet; what is common practice can be confirmed
# $value: with its unit; $source: where it comes from
screens-value-confirm = Use { $value }, { $source }
screens-value-other = Another value
screens-setup-sheets = Spec sheets
screens-setup-sheet = Spec sheet
screens-setup-tools = Torque wrenches
screens-setup-no-tools = No torque wrench on the list yet.
screens-setup-add-person = Add person
screens-setup-change-person = Change a person
screens-setup-add-tool = Add torque wrench
screens-setup-screen = Screen
screens-setup-measure = Set screen size
screens-setup-remove = Remove
screens-setup-left = { $name } worked here before.
screens-setup-tool-off = { $name } was taken off the list.
screens-setup-unsettled = Conflicting changes
screens-setup-device = This tablet
screens-setup-device-title = Name this tablet
screens-setup-device-unnamed = It has no name yet.
screens-setup-device-add = Name it
screens-setup-back = Put back

# Keys of a remote, a pedal or a headset.
screens-remote = Remote keys
screens-remote-explains = For a remote, pedal or headset that sends keys to this tablet.
screens-remote-next = Next
screens-remote-next-explains = Goes to the next thing on the screen: what is asked for first, then the main button.
screens-remote-do = Press
screens-remote-do-explains = Presses what is marked.
screens-remote-back = Back
screens-remote-back-explains = Closes what is open, or goes back.
screens-remote-none = no key
screens-remote-choose = Choose a key
screens-remote-press = Press the key now.
screens-remote-cancel = Cancel
screens-remote-take-away = Take away
# $key: the key that was pressed; $does: what it does from now on
screens-remote-chosen = { $key } is the key for { $does }.
screens-remote-typing = The key { $key } is needed for typing. Press another one.
screens-remote-own = The key { $key } already works everywhere as it is. Press another one.
screens-remote-alone = This key does nothing by itself. Press another one, without Shift, Ctrl or Alt.
# $does: what the key does already
screens-remote-taken = This key is already the one for { $does }. Press another one, or take it away there first.
screens-sound = Sound
screens-sound-explains = A short sound, and a shake where the tablet can, when a timer has run out and when something is refused.
screens-sound-both = Sound and vibration:

screens-setup-work = Switch to
screens-setup-range = { $min } to { $max } { $unit }
screens-setup-class = ± { $percent } %
screens-setup-certificate = certificate { $number }
screens-setup-change = Change
screens-setup-change-tool = Change a torque wrench
screens-setup-keep = SAVE
screens-setup-due = calibrated until { $day }
screens-setup-name = Name
screens-setup-as = Works as
screens-setup-lead = Shop lead
screens-setup-lead-yes = Yes
screens-setup-lead-no = No
screens-setup-leads = lead
screens-setup-add = ADD
screens-setup-measure-title = Set screen size
screens-setup-measure-explains = Lay a bank card lengthwise on the outline. Make the outline as wide as the card.
screens-setup-measured = { $size } pixels per millimeter.
screens-setup-at-limit = Limit reached.
screens-setup-narrower = Narrower by { $by }
screens-setup-wider = Wider by { $by }
screens-setup-use = Use this size

screens-sheet-new = New spec sheet
screens-sheet-import = Import a file
screens-sheet-open = Open
screens-sheet-go-on = Continue
screens-sheet-untitled = No title yet
screens-sheet-unfinished-new = New, not saved yet.
screens-sheet-unfinished = Has changes not saved yet.
screens-sheet-dropped = Unsaved changes discarded: { $title }
screens-sheet-checked-of = { $checked } of { $values } values checked
screens-sheet-built-in = built in
screens-sheet-fits-none = fits no checklist here
screens-sheet-fits = Fits: { $titles }
screens-sheet-blank-for = Blank, with the values this checklist uses
screens-sheet-copy-of = Use as a start: its values are taken over, unchecked
screens-sheet-copy-demo = Use demo values as a start; it stays marked as demo
screens-sheet-for = Which vehicles it is for
screens-sheet-for-explains = Make, model, years, transmission: so that no one takes it for another vehicle.
screens-sheet-typing-new = new; what you type is kept until it is discarded
screens-sheet-typing-next = a change of revision { $revision }; what you type is kept until it is discarded
screens-sheet-blank = –
screens-sheet-says-range = { $min } to { $max } { $unit }
screens-sheet-says-torque = { $fasteners } fasteners: { $targets } { $unit } ± { $tolerance } %
screens-sheet-says-chart = at { $temperatures } { $unit }
screens-sheet-number = Value
screens-sheet-count = How many there are
screens-sheet-min = Lower limit
screens-sheet-max = Upper limit
screens-sheet-fasteners = How many fasteners
screens-sheet-stage = Stage { $number }
screens-sheet-tolerance = Tolerance, ±
screens-sheet-at = { $number } · temperature
screens-sheet-low = { $number } · low mark
screens-sheet-high = { $number } · high mark
screens-sheet-agreement = Readings agree within (may be left out)
screens-sheet-coil-name = { $number } · solenoid
screens-sheet-coil-terminals = { $number } · terminals
screens-sheet-coil-min = { $number } · lower limit
screens-sheet-coil-max = { $number } · upper limit
screens-sheet-out-coils = Remove solenoid { $number }
screens-sheet-more-coils = Add a solenoid
screens-sheet-out-stages = Remove stage { $number }
screens-sheet-out-points = Remove temperature { $number }
screens-sheet-out-positions = Remove place { $number }
screens-sheet-more-points = Add a temperature
screens-sheet-more-positions = Add a place on the map
screens-sheet-place-x = { $number } · to the right
screens-sheet-place-y = { $number } · up
screens-sheet-chart-larger = Show the drawing larger.
screens-sheet-chart-smaller = Smaller
screens-sheet-chart-none = The chart is drawn once two temperatures with both marks are entered.
screens-sheet-more-stages = Add a stage
screens-sheet-text = Text, exactly as in the source
screens-sheet-made-for = Made for
screens-sheet-group-vehicle = The vehicle
screens-sheet-group-fluid = Fluid and level
screens-sheet-group-counts = How many there are
screens-sheet-group-torques = Torques
screens-sheet-group-electrical = Electrical
screens-sheet-group-relearn = Relearn, and for reference
# $count: how many of them
screens-sheet-fold-useful = { $count ->
    [one] One value that is useful and can be left out
   *[other] { $count } values that are useful and can be left out
}
# $count: how many of them
screens-sheet-fold-shop = { $count ->
    [one] One value from Shop setup; give this vehicle its own
   *[other] { $count } values from Shop setup; give this vehicle its own
}
# $name: what is counted
screens-sheet-one-more = One more: { $name }
# $name: what is counted
screens-sheet-one-less = One less: { $name }
# $number: of the row
screens-sheet-same-marks = Same marks in row { $number }
# $value: what is offered, with its unit
screens-sheet-take = Take { $value }, from the level chart
# $percent: of the target
screens-sheet-within = ± { $percent } %
# $count: how many
screens-sheet-counted = { $count } are counted; type how many only where this torque is for others.
# $lost: a sentence
screens-sheet-without = Can be left out. { $lost }
# $from: title and revision of a spec sheet
screens-sheet-taken = taken over from { $from }
screens-sheet-source-whole = Where the values come from: document and place in it. A value can name another source.
screens-sheet-source-own = Another source than that of the sheet
screens-sheet-source = Source: document and place in it
screens-sheet-sources = Sources on this sheet
screens-sheet-asked = Used at: { $steps }
screens-sheet-asked-none = No step uses it; it is for reference only.
screens-sheet-next = Next value to fix
screens-sheet-changed = changed, not saved yet
screens-sheet-entered = entered by { $name }
screens-sheet-entered-on = entered by { $name }, { $day }
screens-sheet-checked = checked by { $name }, { $day }
screens-sheet-unchecked = not checked
screens-sheet-marked = compared
screens-sheet-to-mark = tap when compared
screens-sheet-nobody = Choose who is working first: the sheet names who entered and who checked a value.
screens-sheet-wrong = { $count ->
    [one] { $name } is missing or wrong.
   *[other] { $count } values are missing or wrong, the first is { $name }.
}
screens-sheet-drop = Discard
screens-sheet-keep = SAVE
screens-sheet-edit = Edit
screens-sheet-copy = Use as a start
screens-sheet-export = Export to a file
screens-sheet-compare = Check values
screens-sheet-compare-explains = { $name } compares: tap each value that matches its source. Whoever entered a value can't check it.
screens-sheet-compare-first = Tap at least one value that you compared.
screens-sheet-compare-not = Not now
screens-sheet-compared = { $count ->
    [one] CHECKED: 1 value
   *[other] CHECKED: { $count } values
}

screens-setup-checklists = Checklists
screens-checklist-own = this shop's own
screens-checklist-taken-in = imported, not adopted yet
# $needs: names of values, one after the other
screens-checklist-needs = Needs on the spec sheet: { $needs }
screens-checklist-fits = Spec sheets that fit: { $titles }
screens-checklist-proved-for = Proved for: { $titles }
screens-checklist-sheet-first = It needs a spec sheet first, and none here fits. Make one under Spec sheets, then prove the checklist.
screens-checklist-prove = PROVE
screens-checklist-adopt = ADOPT

screens-pin-title = PIN of { $name }
screens-pin-typed = { $count ->
    [one] 1 digit typed
   *[other] { $count } digits typed
}
screens-pin-give = ENTER PIN
screens-pin-form = A PIN has 4 to 8 digits.
screens-pin-wrong = That is not the PIN of { $name }.
screens-pin-wait = { $seconds ->
    [one] Wait 1 second.
   *[other] Wait { $seconds } seconds.
}
screens-pin-set-title = New PIN for { $name }
screens-pin-first = Type 4 to 8 digits. The PIN is asked for at hold points, where a role signs, and for checking spec sheets.
screens-pin-again = Type it once more.
screens-pin-differ = The two did not match. Type the new PIN again, twice.
screens-pin-onward = Continue
screens-pin-set = SET
screens-pin-new = Set a PIN
screens-pin-change = Change the PIN
screens-pin-since = PIN set { $day }
screens-pin-reset-since = PIN reset by { $lead } with { $second }, { $day }
screens-pin-none = no PIN
screens-pin-reset = Reset the PIN
screens-pin-reset-title = Reset the PIN of { $name }
screens-pin-lead = Shop lead
screens-pin-second = Second person
screens-pin-reset-explains = For a forgotten PIN. The shop lead and a second person each enter their own PIN; { $name } chooses the new one. The record says beside each signature who reset it.
screens-pin-reset-nobody = This PIN can't be reset now: it takes a shop lead and one more person, each with a PIN. Whoever has none must set one first. { $name } can still change it with the old PIN.
