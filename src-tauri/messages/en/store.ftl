# What the store says: why something could not be read or written, what is wrong with a store, what was saved of one.

## Why something could not be read or written

# $dir: the store's folder
store-locked = The store { $dir } is open in another window or program. Close that one, then try again.
# $dir: the folder
store-no-store = There is no store in { $dir }. Check the folder.
# $dir: the store's folder
store-database-gone = The store { $dir } has lost its database: its head file is there, the database is not. Restore a backup.
# $path: the file
store-not-a-store = The file { $path } is not a Panside store. It was left untouched; choose another folder.
# $path: the database file; $found: its format; $known: the newest format this version knows
store-newer = The store { $path } was written by a newer version (store format { $found }; this one knows up to { $known }). It was left untouched; update the app.
# $path: the database file
store-older = The store { $path } was written by an older version. Open it once in the app to bring it up to date.
store-read-only = This store is open for reading only. Open it for writing to make entries.
# $trouble: the first thing that is wrong
store-troubled = Nothing is written to this store until it is put in order. { $trouble }
# $why: what failed
store-faulted = Writing has stopped because of an earlier failure ({ $why }). What was saved can be read; open the store again to go on.
# $doing: store-doing-*
store-unconfirmed = While { $doing }: the disk did not confirm it, so it may or may not be there. Open the store again and look before repeating it.
# $head: the job's head now; $expected: the head that the caller knew
store-stale = The job has changed since this was shown (it is at entry { $head }, this was made for entry { $expected }). Look again, then repeat it.
# $request: the request
store-request-reused = Request { $request } was already used for another entry; this one was not written. Make the entry again.
store-nothing = There is nothing to write in this entry.
# $subject: the job, or the shop; $listed: its newest event by the list; $found: the newest one that was found
store-not-all-there = The entries about { $subject } are not all there: entry { $listed } was confirmed, and { $found } can be read. Nothing is added to it; restore a backup, or salvage what holds.
# $seq: the first number where they differ
store-forked = This job was gone on with on two tablets from entry { $seq } on. Nothing is added to it here; look at both sides and ask which one counts.
# $seq: the first such number; $subject: the job, or the shop
store-own-event-unknown = The received entry { $seq } of { $subject } was written by this device, which no longer has it. Nothing was taken over; restore a newer backup.
# $device: the device; $seq: the number that is there twice
store-device-forked = Device { $device } has two different entries { $seq }: a copy of its data was written to as well. Nothing was taken over; go on in a new epoch on one of the two.
# $path: the file
store-replaced = The files of this store were replaced or taken away while it was open ({ $path }). Nothing is written; open the store again.
store-epoch-used = This epoch was begun before; a new one needs a new id.
store-journal = The journal does not allow it or does not hold.
# $hash: its hash
store-document-missing = Document { $hash } is not in this store. Import it again.
# $hash: its hash
store-document-altered = Document { $hash } was altered on disk. Import it again.
# $hash: its hash; $kept: the kind it is kept under; $given: the kind it was given now
store-document-kind = Document { $hash } is already kept as "{ $kept }", not as "{ $given }".
# $hash: its hash
store-photo-unknown = Photo { $hash } is not known in this store.
# $hash: its hash
store-photo-missing = Photo { $hash } is missing on disk. It may be in a backup.
# $hash: its hash
store-photo-altered = Photo { $hash } was altered on disk. It may be whole in a backup.
# $doing: store-doing-*
store-disk-full = The disk is full: { $doing } was refused and nothing was written. Free some space, then try again; reading goes on.
# $doing: store-doing-*
store-damaged = The database is damaged (found while { $doing }). Restore a backup; what is readable can still be looked at.
# $doing: store-doing-*
store-sql = The database did not answer as it should while { $doing }. Try again; if it stays, open the store again.
# $path: the file or folder; $doing: store-doing-*
store-file = The path { $path } could not be used while { $doing }. Check the disk and its permissions.
# $path: where; $what: store-is-*
store-not-plain = The path { $path } is { $what }, so it is not used. Name the file or folder itself.
# $path: the place
store-no-name = The place { $path } ends without a name. Name a folder.
# $path: the place
store-name-not-text = The name of { $path } is no text (UTF-8). Choose another folder.
# $path: the file; $size: the most bytes, with unit
store-too-large = The file { $path } has more than { $size }, the most that is read of such a file. Check that it is the right one.
# $doing: store-doing-*; $size: the most bytes, with unit
store-too-long = While { $doing }: the text has more than { $size }, the most that is kept. Shorten it.
# $path: the file
store-cannot-read = The file { $path } cannot be read. Check the path.
# $path: the file
store-cannot-write = The file { $path } cannot be written; nothing was changed there. Choose another place, then try again.
# $path: the file
store-already-there = The file { $path } is there already and stays as it is. Choose another name.
# $dir: the folder
store-backup-folder = The folder for backups { $dir } is not there. Plug in its disk or choose another folder; nothing was backed up.
# $dir: the folder
store-inside-store = The folder { $dir } lies inside the store and would be lost with it. Choose another one.
# $dir: the folder
store-backup-busy = Another backup to { $dir } is being made. Try again when it is done.
# $trouble: the first thing that is wrong
store-not-backed-up = This store is not backed up, because it does not hold. Earlier backups are kept. { $trouble }
# $path: the folder; $why: why not
store-not-a-backup = The folder { $path } is no backup that can be read ({ $why }). Choose a folder such as 2026-11-30T081500Z-354.
# $path: the folder; $trouble: the first thing that is wrong
store-backup-altered = The backup { $path } does not hold. Choose another one. { $trouble }
# $dir: the folder
store-not-empty = The folder { $dir } has something in it that is no store. It was left untouched; choose another folder.
# $why: why the backup could not be put in its place, as a sentence; $aside: where the store is now; $dir: where it stood
store-left-aside = The backup could not be put in its place ({ $why }) The store that stood there is whole in { $aside }; rename that folder to { $dir }, then open the app again.
store-busy = Another program is reading this store and would not let go. Close it, then try again.
# $said: why it failed; $cause: a sentence
store-with-cause = { $said } { $cause }
# $said: what the system or the database said, in its own words
store-system-says = The system says: { $said }.
store-no-space = no space left on the disk
# $doing: store-doing-*; $why: what was at the bottom of it
store-faulted-while = { $doing }: { $why }
# $format: what the manifest says of its format
store-backup-format = it is of another format, { $format }
store-note-altered = it is not as it was written

## What the store was doing, as in "while keeping a photo"

store-doing-backing-up-beforehand = backing up the store before bringing it up to date
store-doing-beginning-epoch = beginning a new epoch
store-doing-bringing-up-to-date = bringing the store up to date
store-doing-carrying-log = carrying the log over into the database
store-doing-checking = checking the store
store-doing-clearing-backup = taking away an old backup
store-doing-closing = closing the store
store-doing-keeping-document = keeping a document
store-doing-keeping-draft = keeping a draft
store-doing-keeping-photo = keeping a photo
store-doing-keeping-pin = keeping what is known of a PIN
store-doing-keeping-proof = keeping a proof
store-doing-keeping-setting = keeping a setting
store-doing-keeping-sheet-draft = keeping what is typed of a spec sheet
store-doing-listing-jobs = listing the jobs
store-doing-looking-at-backup = looking at a backup
store-doing-looking-at-folder = looking at a folder
store-doing-making-backup = making a backup
store-doing-making-store = making a new store
store-doing-noting = noting how far the store has come
store-doing-opening = opening the store
store-doing-reading-backup = reading a backup
store-doing-reading-document = reading a document
store-doing-reading-draft = reading a draft
store-doing-reading-entries = reading the entries of a job
store-doing-reading-head-file = reading the head file
store-doing-reading-journal = reading the journal
store-doing-reading-pages = reading the pages of a damaged database
store-doing-reading-photo = reading a photo
store-doing-reading-pins = reading what is known of the PINs
store-doing-reading-proof = reading a proof
store-doing-reading-setting = reading a setting
store-doing-reading-sheets = reading the spec sheets
store-doing-rebuilding-jobs = rebuilding the list of jobs
store-doing-receiving = taking over entries of another device
store-doing-restoring = restoring a backup
store-doing-salvaging = saving what holds of a damaged store
store-doing-saving-record = saving a record
store-doing-saving-checklist = saving a checklist as a file
store-doing-saving-sheet = saving a spec sheet as a file
store-doing-sweeping-photos = sweeping unnamed photos
store-doing-verifying = verifying the journal
store-doing-writing-entry = writing an entry
store-doing-writing-head-file = writing the head file

## What stands under a name

store-is-device = a device
store-is-pipe = a pipe
store-is-socket = a socket
store-is-folder = a folder
store-is-link = a link
store-is-file = a file
store-is-other = something else

## What is wrong with a store

# $troubles: sentences
store-troubles = { $troubles }
# $have: the newest event that is there; $named: the newest event that was confirmed
store-trouble-tail-lost = The newest entries are lost: the journal ends at entry { $have }, but entry { $named } was confirmed. Restore a backup, or go on from here in a new epoch.
# $named: the newest event that was confirmed
store-trouble-head-differs = This is not the journal that was last written here: entry { $named } differs from the confirmed one. Restore the right backup, or go on from here in a new epoch.
store-trouble-epoch-lost = The newest epoch of this store is lost. Restore a backup, or go on from here in a new epoch.
store-trouble-head-file-missing = The head file is missing, as after copying the database alone: it cannot be known whether the newest entries are there. Look, then go on in a new epoch.
store-trouble-head-file-unreadable = The head file cannot be read: it cannot be known whether the newest entries are there. Look, then go on in a new epoch.
store-trouble-head-file-foreign = The head file belongs to another store. Look whether the newest entries are there, then go on in a new epoch.
# $have: the newest event that is there; $noted: the newest event that was noted outside the folder
store-trouble-set-back = This folder is in an earlier state: it ends at entry { $have }, but entry { $noted } was made here. Restore the newest backup, or go on from here in a new epoch.
# $original: the folder that was written last
store-trouble-copied = This folder is a copy of { $original }, which is still there. Work in that one; or go on in this one in a new epoch.
store-trouble-not-seen-here = This folder was not written here before: it cannot be told whether it is a copy, or an older state of one. Look whether the newest entries are there, then go on in a new epoch.
# $path: the file outside the folder; $why: why not
store-trouble-not-noted = It would not be noticed if this folder were a copy or in an earlier state: { $path } could not be used ({ $why }).
# $why: what is wrong, a sentence
store-trouble-chain = The journal does not hold: { $why }
# $device_seq: its number on the device
store-trouble-epoch-differs = Entry { $device_seq } of this device is in an epoch that was not begun there.
# $seq: its number; $subject: the job, or the shop
store-trouble-side-alone = Entry { $seq } of { $subject } follows no entry that is there.
# $row: the row
store-trouble-row-unreadable = Row { $row } of the journal cannot be read.
# $detail: what SQLite said
store-trouble-damaged = The database is damaged: { $detail }
# $subject: the job, or the shop
store-trouble-list-differs = The list of jobs is not right about { $subject }. Rebuild it from the journal.
store-trouble-list-unknown = The list of jobs is not the one that was last confirmed. Rebuild it from the journal.
store-trouble-manifest-differs = The backup does not hold what its manifest says.
# $hash: its hash
store-trouble-document-altered = Document { $hash } was altered on disk. Import it again.
# $hash: its hash; $subject: the job, or the shop, that names it
store-trouble-document-missing = Document { $hash }, by which { $subject } goes, is not in this store. It may be in a backup.
# $hash: its hash; $subject: the job that names it
store-trouble-photo-unkept = Photo { $hash }, which an entry of { $subject } names, is not kept in this store. It may be in a backup.
# $hash: its hash; $job: the job it is kept for
store-trouble-photo-missing = Photo { $hash } of job { $job } is missing on disk.
# $hash: its hash; $job: the job it is kept for
store-trouble-photo-altered = Photo { $hash } of job { $job } was altered on disk.

## What was saved of a damaged store

# $into: folder of the new store; $lines: the rest of the report, each on a line of its own
store-salvaged = Saved into { $into }:{ $lines }
store-salvaged-counts = { $entries } entries about { $subjects } jobs and shops, { $documents } documents, { $photos } photos, each verified.
store-salvaged-all = Nothing is known to be missing.
store-salvaged-not = Not saved:
# $what: a sentence
store-salvaged-item = - { $what }
# $subject: the job, or the shop; $saved, $of: numbers of entries; $gone: the first entry that is not saved
store-salvaged-rest = { $subject }: { $saved } of { $of } entries; entry { $gone } is gone or does not hold.
# as above; $after: how many entries hold by themselves behind it
store-salvaged-rest-after = { $subject }: { $saved } of { $of } entries; entry { $gone } is gone or does not hold, and { $after } after it that hold by themselves have nothing to follow.
# $confirmed, $saved: numbers of entries
store-salvaged-confirmed = The head file confirms { $confirmed } entries in all; { $saved } are saved.
# $table: its name; $why: what the database said, or a message
store-salvaged-table = Not all of "{ $table }" could be read: { $why }.
store-row-differs = a row of it has another form
