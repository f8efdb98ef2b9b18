# Backups, and the ways back: restoring one, saving what can be read of damaged job data.
screens-backups = Backups
screens-backups-plan = Set up backups
screens-backups-none = No backup folder is set. If this tablet breaks, its jobs are lost.
screens-backups-unread = The job data can't be opened, so nothing is known about its backups.
screens-backups-every = { $hours ->
    [one] Every hour, the newest { $keep } are kept
   *[other] Every { $hours } hours, the newest { $keep } are kept
}
screens-backups-newest = { $count ->
    [one] Newest: { $age }, 1 entry
   *[other] Newest: { $age }, { $count } entries
}
screens-backups-not-made = No backup in this folder yet.
screens-backups-lacks = Missing from it, because damaged or lost on this tablet:
screens-backups-now = Back up now
screens-backups-making = The backup is being made and verified. You can keep working.
screens-backups-made = { $count ->
    [one] Backed up and verified: 1 entry, photos: { $photos }, new ones: { $copied }
   *[other] Backed up and verified: { $count } entries, photos: { $photos }, new ones: { $copied }
}
screens-backups-removed = { $count ->
    [one] 1 older backup was removed.
   *[other] { $count } older backups were removed.
}
screens-backups-end = Stop backups
screens-backup-explains = The folder must already exist, best on another disk: a USB stick or the shop's server.
screens-backup-folder = Folder, full path
screens-backup-hours = Hours between backups
screens-backup-keep = Backups to keep

screens-restore = Restore a backup
screens-restore-folder = Folder with the backups, full path
screens-restore-look = Find backups
screens-restore-none = There is no backup in this folder.
screens-restore-facts = { $count ->
    [one] 1 entry, photos: { $photos }.
   *[other] { $count } entries, photos: { $photos }.
}
screens-restore-lacking = { $count ->
    [one] Missing from it: 1 photo or text that was damaged or lost on its tablet.
   *[other] Missing from it: { $count } photos or texts that were damaged or lost on their tablet.
}
screens-restore-another = It was made on another tablet.
screens-restore-this = Restore
screens-restore-looking = The backup is being verified and compared with this tablet.
screens-restore-ask = Restore this backup?
screens-restore-is = Made { $age }:
screens-restore-all = It has every entry made on this tablet.
screens-restore-entries = { $count ->
    [one] The newest entry made on this tablet is not in it.
   *[other] The newest { $count } entries made on this tablet are not in it.
}
screens-restore-unknown = It is not known how many entries are missing from it: not everything on this tablet can be read, or the backup is another tablet's.
screens-restore-no-store = No job data is on this tablet, so nothing can be missing from it.
screens-restore-job = { $lacking ->
    [one] { $called }: 1 entry is not in it, { $restored } are.
   *[other] { $called }: { $lacking } entries are not in it, { $restored } are.
}
screens-restore-settings = People, torque wrenches, PINs, spec sheets and anything typed but not entered go back to that time too.
screens-restore-aside = What is on this tablet now is moved to a folder beside it. Nothing is deleted.
screens-restore-not-now = Not now
screens-restore-do = RESTORE
screens-restore-doing = The backup is being restored. Leave the tablet on.
screens-restored = The backup is restored
screens-restored-is = The job data is from { $age }.
screens-restored-moved = What was on this tablet before is kept here:
screens-restored-on = Continue

screens-save = Save what can be read
screens-save-explains = Everything that can still be read and verified is copied to a new folder. The job data here stays as it is.
screens-save-folder = New or empty folder, full path
screens-save-do = SAVE
screens-save-doing = What can be read is being saved. Leave the tablet on.
screens-saved = Saved and verified: entries: { $events }, jobs: { $subjects }, photos: { $photos }
screens-saved-into = Saved here:
screens-saved-then = To work with it, start Panside with --store and this folder.
screens-saved-all = Nothing is known to be missing.
screens-saved-not = Not saved:
