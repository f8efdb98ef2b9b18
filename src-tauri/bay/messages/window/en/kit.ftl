# What the shop has: people, torque tools, spec sheets; and how the glass is.
screens-kit = Kit
screens-kit-people = People
screens-kit-sheets = Spec sheets
screens-kit-sheet = Spec sheet
screens-kit-tools = Torque tools
screens-kit-no-tools = No torque tool is named yet.
screens-kit-add-person = Add person
screens-kit-change-person = Change a person
screens-kit-add-tool = Name a torque tool
screens-kit-measure = Measure the glass
screens-kit-remove = Remove
screens-kit-left = { $name } worked here before.
screens-kit-tool-off = { $name } is off the list.
screens-kit-unsettled = To be settled
screens-kit-device = This tablet
screens-kit-device-title = Name this tablet
screens-kit-device-unnamed = It has no name yet.
screens-kit-device-add = Name it
screens-kit-back = Put back
screens-kit-work = Takes over
screens-kit-range = { $min } to { $max } { $unit }
screens-kit-class = ± { $percent } %
screens-kit-certificate = certificate { $number }
screens-kit-change = Change
screens-kit-change-tool = Change a torque tool
screens-kit-keep = KEEP
screens-kit-due = calibrated until { $day }
screens-kit-name = Name
screens-kit-as = Works as
screens-kit-lead = Leads the shop
screens-kit-lead-yes = Yes
screens-kit-lead-no = No
screens-kit-leads = lead
screens-kit-add = ADD
screens-kit-measure-title = Measure the glass
screens-kit-measure-explains = Lay a bank card, the long side across, on the outline. Make the outline as wide as the card.
screens-kit-measured = { $size } points of the screen in a millimetre.
screens-kit-at-limit = No glass goes further.
screens-kit-narrower = Narrower by { $by }
screens-kit-wider = Wider by { $by }
screens-kit-use = Use this size

screens-sheet-new = New spec sheet
screens-sheet-import = Take in a file
screens-sheet-open = Open
screens-sheet-go-on = Go on
screens-sheet-untitled = Without a title yet
screens-sheet-unfinished-new = New, not kept yet.
screens-sheet-unfinished = A change of it is typed and not kept yet.
screens-sheet-dropped = What was typed is put away: { $title }
screens-sheet-checked-of = { $checked } of { $values } values checked
screens-sheet-built-in = belongs to the program
screens-sheet-fits-none = fits no checklist here
screens-sheet-fits = Fits: { $titles }
screens-sheet-blank-for = Blank, with what this checklist asks for
screens-sheet-copy-of = A copy of
screens-sheet-copy-demo = A copy of demo values; it stays marked as demo
screens-sheet-for = Which vehicles it is for
screens-sheet-for-explains = Make, model, years, transmission: so that nobody takes it for another vehicle.
screens-sheet-values = Values
screens-sheet-typing-new = new; what is typed is kept until it is put away
screens-sheet-typing-next = a change of revision { $revision }; what is typed is kept until it is put away
screens-sheet-blank = –
screens-sheet-says-range = { $min } to { $max } { $unit }
screens-sheet-says-torque = { $fasteners } fasteners: { $targets } { $unit } ± { $tolerance } %
screens-sheet-says-chart = at { $temperatures } { $unit }
screens-sheet-number = Value
screens-sheet-min = Lower limit
screens-sheet-max = Upper limit
screens-sheet-fasteners = How many fasteners
screens-sheet-stage = Stage { $number }
screens-sheet-tolerance = Tolerance, to both sides
screens-sheet-at = { $number } · temperature
screens-sheet-low = { $number } · low mark
screens-sheet-high = { $number } · high mark
screens-sheet-agreement = Readings agree within
screens-sheet-out-stages = Take stage { $number } out
screens-sheet-out-points = Take temperature { $number } out
screens-sheet-out-positions = Take place { $number } out
screens-sheet-more-points = One more temperature
screens-sheet-more-positions = One more place for the map
screens-sheet-place-x = { $number } · to the right
screens-sheet-place-y = { $number } · upwards
screens-sheet-chart-larger = Show the drawing larger.
screens-sheet-chart-smaller = Smaller
screens-sheet-chart-none = The chart is drawn once two temperatures with both marks are typed.
screens-sheet-more-stages = One more stage
screens-sheet-text = Text, as it stands in the source
screens-sheet-source = Source: the document and its place in it
screens-sheet-sources = Sources on this sheet
screens-sheet-asked = Asked at: { $steps }
screens-sheet-asked-none = No step asks for it; it is there to be read.
screens-sheet-next = Next value to mend
screens-sheet-changed = changed, not kept yet
screens-sheet-entered = entered by { $name }
screens-sheet-entered-on = entered by { $name }, { $day }
screens-sheet-checked = checked by { $name }, { $day }
screens-sheet-unchecked = not checked
screens-sheet-marked = compared
screens-sheet-to-mark = tap when compared
screens-sheet-nobody = Say who works first: the sheet names who entered and who checked a value.
screens-sheet-wrong = { $count ->
    [one] { $name } is missing or wrong.
   *[other] { $count } values are missing or wrong, the first is { $name }.
}
screens-sheet-drop = Put away
screens-sheet-keep = KEEP
screens-sheet-edit = Edit
screens-sheet-copy = Make a copy
screens-sheet-export = Save as a file
screens-sheet-compare = Check values
screens-sheet-compare-explains = { $name } compares: tap each value that stands like this in its source. Who entered a value can't check it.
screens-sheet-compare-first = Tap at least one value that was compared.
screens-sheet-compare-not = Not now
screens-sheet-compared = { $count ->
    [one] CHECKED: 1 value
   *[other] CHECKED: { $count } values
}

screens-pin-title = PIN of { $name }
screens-pin-typed = { $count ->
    [one] 1 digit typed
   *[other] { $count } digits typed
}
screens-pin-give = GIVE
screens-pin-form = A PIN has 4 to 8 digits.
screens-pin-wrong = That is not the PIN of { $name }.
screens-pin-wait = { $seconds ->
    [one] Wait 1 second.
   *[other] Wait { $seconds } seconds.
}
screens-pin-set-title = A new PIN for { $name }
screens-pin-first = Type 4 to 8 digits. The PIN is asked at hold points, where a role signs, and for checking spec sheets.
screens-pin-again = Type it once more.
screens-pin-differ = That was another one. Type the new PIN again, twice.
screens-pin-onward = Go on
screens-pin-set = SET
screens-pin-new = Set a PIN
screens-pin-change = Change the PIN
screens-pin-since = PIN set { $day }
screens-pin-reset-since = PIN reset by { $lead } with { $second }, { $day }
screens-pin-none = no PIN
screens-pin-reset = Reset the PIN
screens-pin-reset-title = Reset the PIN of { $name }
screens-pin-lead = The lead
screens-pin-second = Second person
screens-pin-reset-explains = For a forgotten PIN. The lead and a second person each enter their own PIN; { $name } chooses the new one. The record says beside each signature who reset it.
screens-pin-reset-nobody = This PIN can't be reset now: it takes a lead and one more person, both with a PIN of their own. Have the missing one set their own PIN first. { $name } can still change it with the old PIN.
