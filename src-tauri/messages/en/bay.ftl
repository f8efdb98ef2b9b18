# What the use cases say: why one failed, where a plan has somebody go, and what is said of a store and its backups.

## Why a use case failed

# $problems: each on a line of its own
bay-checklist = The checklist does not load. Correct it and try again:{ $problems }
# $problems: each on a line of its own
bay-sheet = The spec sheet does not load. Correct it and try again:{ $problems }
# $problems: each on a line of its own
bay-texts = The translation of the checklist has mistakes. Correct it and try again:{ $problems }
# $problems: each on a line of its own
bay-sheet-lacks = The spec sheet does not fit the checklist:{ $problems }
# $names: what people read for the values
bay-shop-lacks = The shop has no value yet for: { $names }. Set it once under Shop setup, Shop values, then start the job.
# Where a value comes from that no document gives
bay-common-practice = common practice
# $title: of a spec sheet; $revision: its revision
bay-taken-from = { $title }, revision { $revision }
# $id: its id; $why: bay-refuted, bay-refuted-by or bay-undecided
bay-not-proved = The checklist "{ $id }" is not proved, so no job can be started with it: { $why }
bay-not-proved-yet = The checklist is not proved on this tablet yet. Prove it first, then start the job.
# $id: its id
bay-needs-sheet = The checklist "{ $id }" needs a spec sheet first: what it allows depends on the vehicle. Make a spec sheet for it, then prove it.
# $problems: each on a line of its own
bay-checklist-parts = The checklist uses parts that are not here. Print the whole with "panside-cli join", then take that in:{ $problems }
# $id: its id
bay-checklist-id = The checklist in this file is called "{ $id }". A checklist's id has small letters, digits and hyphens only, 100 at most; correct the file.
# $id: its id
bay-checklist-built-in = The program has a checklist with this id, "{ $id }". Give yours another id in its file, then take it in again.
# $id: its id
bay-adopt-not-proved = The checklist "{ $id }" is not proved for any vehicle yet. Prove it first, then adopt it.
# $id: its id
bay-not-on-shelf = There is no checklist or spec sheet "{ $id }" here. Choose one that is offered.
# $id: its id
bay-sheet-built-in = The spec sheet "{ $id }" belongs to the program and stays as it is. Make a copy of it and change that.
# $problems: each on a line of its own
bay-sheet-not-kept = The spec sheet is not kept yet:{ $problems }
bay-sheet-draft = Nothing is typed of this spec sheet any more: it was kept or put away. Look at the list.
# $id: its id
bay-sheet-id = The spec sheet in this file is called "{ $id }". A sheet's id has small letters, digits and hyphens only, 100 at most; correct the file.
bay-no-person = Only the shop's people can work and sign. Add the person to the shop's list, or choose somebody from it.
# $name: what they are called
bay-pin-asked = The PIN of { $name } is needed for this. Enter it, then repeat.
bay-pin-form = A PIN has 4 to 8 digits. Choose another one.
# $name: name of the person
bay-pin-of-other = Only { $name } sets this PIN. If { $name } has forgotten it, the shop's lead resets it together with a second person.
# $name: name of the person
bay-pin-first-own = { $name } has no PIN yet. { $name } sets the first one alone; there is nothing to reset.
# $name: name of the person
bay-pin-lead = A forgotten PIN is reset by the shop's lead, who enters their own PIN for it. Choose somebody who leads the shop, has a PIN and is not { $name }. If there is nobody, this cannot be done now: mark a person as lead in the shop's list, and let them set their own PIN first.
# $name: name of the person
bay-pin-second = The lead does not reset the PIN of { $name } alone: a second person who has a PIN enters theirs too, and is neither the lead nor { $name }. If nobody else has a PIN, this cannot be done now. Let another person of the shop set their own PIN first, then repeat.
# $name: name of the person
bay-no-pin = { $name } has no PIN on this tablet, so there is none to give.
# $why: what was said of it
bay-pin-hash = The PIN could not be taken ({ $why }). Try again.
# $problems: each on a line of its own
bay-tool = The torque tool is not kept yet:{ $problems }
bay-photo-not-kept = This photo is not kept for this job, so it was not entered. Take it again.
# $why: what was said of it
bay-backup-failed = The last backup failed. Put that right; it is tried again every hour. { $why }
# $path: as typed
bay-whole-path = "{ $path }" is not the whole path of a folder. Type it from / on.
# $job: its id
bay-no-job = There is no job { $job } on this tablet. List the jobs to see which there are.
# $job: the job
bay-stale = The job { $job } has moved on: somebody entered something meanwhile. Look at it again and repeat.
# $sentences: the refusal, and what is missing
bay-refused = { $sentences }
# $hash: its hash
bay-pinned = The text { $hash } that the job goes by cannot be read as what it was. Check the store.
# $why: what was said of it
bay-json = Writing JSON failed: { $why }
# $key: name of the value; $said: what is wrong with it, a sentence
bay-sheet-field = { $key }: { $said }
bay-plan-folder = The folder for backups is not there. Type its whole path, from / on.
bay-plan-numbers = A backup is made every 1 to 720 hours, and 1 to 1000 are kept.
bay-plan-no-folder = Name the folder for backups first.

## Why a checklist is not proved

# $what: finding-*
bay-refuted = { $what }
# $what: finding-*; $run: action-*, more of them joined by bay-then
bay-refuted-by = { $what } The shortest way there: { $run }.
bay-then = { $start }, then { $next }
# $states: how many were found
bay-undecided = the search ran to { $states } states and did not come to its end

## Where a plan has somebody go

# $zone: a zone as it stands in the checklist's file; said after "go to"
bay-zone = { $zone ->
    [under] under the vehicle
    [engine_bay] the engine bay
    [cabin] the cabin
   *[bench] the bench
}

## What is said of a store and its backups

# $trouble: a sentence
bay-mended = { $trouble } It was made anew from the journal just now; nothing that was entered is lost.
# $job: its id; $language: a language tag; $why: a sentence
bay-own-words = Job { $job } is shown in the checklist's own words: its translation ("{ $language }") cannot be read. { $why }
bay-called-shop = The shop's people, tools, spec sheets and checklists
bay-age-future = in the future by this tablet's clock
# $number: how many
bay-age-minutes = { $number ->
    [one] { $number } minute ago
   *[other] { $number } minutes ago
}
# $number: how many
bay-age-hours = { $number ->
    [one] { $number } hour ago
   *[other] { $number } hours ago
}
# $number: how many
bay-age-days = { $number ->
    [one] { $number } day ago
   *[other] { $number } days ago
}
