# What is said of the shop: why something isn't done, and what somebody has to settle.

## Why nothing is written

# $name: the name, as it would be kept; $existing: the name it looks like
shop-looks-like = "{ $name }" can't be told from "{ $existing }", which is on the list already. Choose that one, or give a name that tells them apart.
# $name: the name, as it would be kept; $existing: the name it looks like
shop-looks-like-left = "{ $name }" can't be told from "{ $existing }", who worked here before. If it is the same person, put them back on the list; otherwise give a name that tells them apart.
shop-who-unknown = Who you are is not known in this shop. Choose yourself from the shop's people, or be added first.
shop-nobody-yet = This shop has no people yet. Add yourself first, then the others.
# $thing: shop-thing-*
shop-not-here = This { $thing } is not on the shop's list. Look at the list again and choose one that is.
# $thing: shop-thing-*
shop-changed-meanwhile = This { $thing } was changed meanwhile. Look at it again and repeat.
# $thing: shop-thing-*
shop-unchanged = This { $thing } is kept like this already. Change something first.
# $name: the person's name
shop-no-role = "{ $name }" has no role. Choose at least one.
# $leads: names of the leads
shop-lead-asked = Only a lead says who is a lead. Ask { $leads } to do it.
# $name: the lead's name
shop-last-lead = "{ $name }" is the only lead. Make somebody else a lead first.
shop-pin-of-other = A PIN is set by whose it is. If it was forgotten, ask a lead to set it before a second person.
shop-pin-witness = A forgotten PIN is set by a lead before a second person. Neither of them is the one whose PIN it is: choose three different people.
# $newest: the highest number that is here; $id: the sheet's id; $revision: the number of the one that was to be kept
shop-sheet-older = Revision { $newest } of the spec sheet "{ $id }" is here already; this one says { $revision }. Give it a higher number.
# $id: the checklist's id; $revision: its number
shop-checklist-revision = Another text of the checklist "{ $id }" was adopted as revision { $revision }. Give this one a higher number in its file, then take it in again.
shop-sheet-base = The revision that this spec sheet was made from is not in this shop. Open the sheet anew and repeat the change.

## Names that aren't taken

shop-name-missing = The name is missing. Type one.
# $chars: how many it has; $longest: the most
shop-name-too-long = The name has { $chars } characters, and { $longest } are the most. Shorten it.
# $name: the name
shop-name-no-letter = The name "{ $name }" has no letter. Type a name that has one.
# $name: the name
shop-name-no-letter-or-digit = The name "{ $name }" has no letter and no digit. Type a name that has one.
# $what: shop-hidden-*; $code: its code point; $place: its place among the characters, counted from 1, without white space at the front
shop-name-hidden = The name has { $what }, U+{ $code }, at place { $place }. Type the name again without it.

## Characters in names that aren't taken

shop-hidden-control = a control character
shop-hidden-direction = a character that changes the direction of writing
shop-hidden-invisible = a character that can't be seen
shop-hidden-unassigned = a character without a meaning

## The things of a shop, as in "This person was changed"

shop-thing-person = person
shop-thing-pin = PIN
shop-thing-tool = torque tool
shop-thing-sheet = spec sheet
shop-thing-checklist = checklist
shop-thing-device = device
shop-thing-value = shop value

## What has to be settled

# $thing: shop-thing-*; $name: what it is called; $sides: shop-side, more of them joined by shop-next-side
shop-both-sides = The { $thing } "{ $name }" was changed on two devices at once. { $sides }. The first of these is in use: keep it as it should be.
# $who: name of a person; $device: name of a device, or shop-device; $changed: shop-said-*, more of them joined by shop-next-piece
shop-side = { $who } on { $device }: { $changed }
shop-next-side = { $start }; { $next }
shop-next-piece = { $start }, { $next }
shop-and = { $start } and { $last }
# $name: name of a person, tool or device
shop-said-name = name "{ $name }"
# $roles: shop-role, more of them joined by shop-and
shop-said-roles = works as { $roles }
shop-said-no-roles = without a role
# $role: technician, second_person or service_writer
shop-role =
    { $role ->
        [service_writer] service writer
        [second_person] second person
       *[technician] technician
    }
shop-said-lead = lead
shop-said-no-lead = no lead
# $lowest, $highest: numbers; $unit: its symbol
shop-said-range = range { $lowest } to { $highest } { $unit }
# $due: a day
shop-said-calibration = calibration due { $due }
# $revision: a number
shop-said-content = revision { $revision }
shop-said-pin = a new PIN
# $is: with its unit; $source: where it comes from
shop-said-value = { $is } ({ $source })
shop-said-removed = taken off the list
shop-said-nothing = nothing
# $id: its id
shop-device = device { $id }
# $name, $other: what they are called; $thing: shop-thing-*
shop-alike = "{ $name }" and "{ $other }", each a { $thing } of this shop, can't be told apart: they were added on two devices. Change one of the names.
# $name: the person's name
shop-stand-in = No lead is left: each was let go or changed on another device. { $name } counts as the lead until one is named.
