//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/store.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    // Why something could not be read or written.
    store_locked "store-locked" (dir);
    store_no_store "store-no-store" (dir);
    store_database_gone "store-database-gone" (dir);
    store_not_a_store "store-not-a-store" (path);
    store_newer "store-newer" (path, found, known);
    store_older "store-older" (path);
    store_read_only "store-read-only" ();
    store_troubled "store-troubled" (trouble);
    store_faulted "store-faulted" (why);
    store_unconfirmed "store-unconfirmed" (doing);
    store_stale "store-stale" (head, expected);
    store_request_reused "store-request-reused" (request);
    store_nothing "store-nothing" ();
    store_not_all_there "store-not-all-there" (subject, listed, found);
    store_forked "store-forked" (seq);
    store_own_event_unknown "store-own-event-unknown" (seq, subject);
    store_device_forked "store-device-forked" (device, seq);
    store_replaced "store-replaced" (path);
    store_epoch_used "store-epoch-used" ();
    store_journal "store-journal" ();
    store_document_missing "store-document-missing" (hash);
    store_document_altered "store-document-altered" (hash);
    store_document_kind "store-document-kind" (hash, kept, given);
    store_photo_unknown "store-photo-unknown" (hash);
    store_photo_missing "store-photo-missing" (hash);
    store_photo_altered "store-photo-altered" (hash);
    store_disk_full "store-disk-full" (doing);
    store_damaged "store-damaged" (doing);
    store_sql "store-sql" (doing);
    store_file "store-file" (path, doing);
    store_not_plain "store-not-plain" (path, what);
    store_no_name "store-no-name" (path);
    store_name_not_text "store-name-not-text" (path);
    store_too_large "store-too-large" (path, size);
    store_too_long "store-too-long" (doing, size);
    store_cannot_read "store-cannot-read" (path);
    store_cannot_write "store-cannot-write" (path);
    store_already_there "store-already-there" (path);
    store_backup_folder "store-backup-folder" (dir);
    store_inside_store "store-inside-store" (dir);
    store_backup_busy "store-backup-busy" (dir);
    store_not_backed_up "store-not-backed-up" (trouble);
    store_not_a_backup "store-not-a-backup" (path, why);
    store_backup_altered "store-backup-altered" (path, trouble);
    store_not_empty "store-not-empty" (dir);
    store_left_aside "store-left-aside" (why, aside, dir);
    store_busy "store-busy" ();
    store_with_cause "store-with-cause" (said, cause);
    store_system_says "store-system-says" (said);
    store_no_space "store-no-space" ();
    store_faulted_while "store-faulted-while" (doing, why);
    store_backup_format "store-backup-format" (format);
    store_note_altered "store-note-altered" ();

    // What the store was doing.
    store_doing_backing_up_beforehand "store-doing-backing-up-beforehand" ();
    store_doing_beginning_epoch "store-doing-beginning-epoch" ();
    store_doing_bringing_up_to_date "store-doing-bringing-up-to-date" ();
    store_doing_carrying_log "store-doing-carrying-log" ();
    store_doing_checking "store-doing-checking" ();
    store_doing_clearing_backup "store-doing-clearing-backup" ();
    store_doing_closing "store-doing-closing" ();
    store_doing_keeping_document "store-doing-keeping-document" ();
    store_doing_keeping_draft "store-doing-keeping-draft" ();
    store_doing_keeping_photo "store-doing-keeping-photo" ();
    store_doing_keeping_pin "store-doing-keeping-pin" ();
    store_doing_keeping_proof "store-doing-keeping-proof" ();
    store_doing_keeping_setting "store-doing-keeping-setting" ();
    store_doing_keeping_sheet_draft "store-doing-keeping-sheet-draft" ();
    store_doing_listing_jobs "store-doing-listing-jobs" ();
    store_doing_looking_at_backup "store-doing-looking-at-backup" ();
    store_doing_looking_at_folder "store-doing-looking-at-folder" ();
    store_doing_making_backup "store-doing-making-backup" ();
    store_doing_making_store "store-doing-making-store" ();
    store_doing_noting "store-doing-noting" ();
    store_doing_opening "store-doing-opening" ();
    store_doing_reading_backup "store-doing-reading-backup" ();
    store_doing_reading_document "store-doing-reading-document" ();
    store_doing_reading_draft "store-doing-reading-draft" ();
    store_doing_reading_entries "store-doing-reading-entries" ();
    store_doing_reading_head_file "store-doing-reading-head-file" ();
    store_doing_reading_journal "store-doing-reading-journal" ();
    store_doing_reading_pages "store-doing-reading-pages" ();
    store_doing_reading_photo "store-doing-reading-photo" ();
    store_doing_reading_pins "store-doing-reading-pins" ();
    store_doing_reading_proof "store-doing-reading-proof" ();
    store_doing_reading_setting "store-doing-reading-setting" ();
    store_doing_reading_sheets "store-doing-reading-sheets" ();
    store_doing_rebuilding_jobs "store-doing-rebuilding-jobs" ();
    store_doing_receiving "store-doing-receiving" ();
    store_doing_restoring "store-doing-restoring" ();
    store_doing_salvaging "store-doing-salvaging" ();
    store_doing_saving_record "store-doing-saving-record" ();
    store_doing_saving_checklist "store-doing-saving-checklist" ();
    store_doing_saving_sheet "store-doing-saving-sheet" ();
    store_doing_sweeping_photos "store-doing-sweeping-photos" ();
    store_doing_verifying "store-doing-verifying" ();
    store_doing_writing_entry "store-doing-writing-entry" ();
    store_doing_writing_head_file "store-doing-writing-head-file" ();

    // What stands under a name.
    store_is_device "store-is-device" ();
    store_is_pipe "store-is-pipe" ();
    store_is_socket "store-is-socket" ();
    store_is_folder "store-is-folder" ();
    store_is_link "store-is-link" ();
    store_is_file "store-is-file" ();
    store_is_other "store-is-other" ();

    // What is wrong with a store.
    store_troubles "store-troubles" (troubles);
    store_trouble_tail_lost "store-trouble-tail-lost" (have, named);
    store_trouble_head_differs "store-trouble-head-differs" (named);
    store_trouble_epoch_lost "store-trouble-epoch-lost" ();
    store_trouble_head_file_missing "store-trouble-head-file-missing" ();
    store_trouble_head_file_unreadable "store-trouble-head-file-unreadable" ();
    store_trouble_head_file_foreign "store-trouble-head-file-foreign" ();
    store_trouble_set_back "store-trouble-set-back" (have, noted);
    store_trouble_copied "store-trouble-copied" (original);
    store_trouble_not_seen_here "store-trouble-not-seen-here" ();
    store_trouble_not_noted "store-trouble-not-noted" (path, why);
    store_trouble_chain "store-trouble-chain" (why);
    store_trouble_epoch_differs "store-trouble-epoch-differs" (device_seq);
    store_trouble_side_alone "store-trouble-side-alone" (seq, subject);
    store_trouble_row_unreadable "store-trouble-row-unreadable" (row);
    store_trouble_damaged "store-trouble-damaged" (detail);
    store_trouble_list_differs "store-trouble-list-differs" (subject);
    store_trouble_list_unknown "store-trouble-list-unknown" ();
    store_trouble_manifest_differs "store-trouble-manifest-differs" ();
    store_trouble_document_altered "store-trouble-document-altered" (hash);
    store_trouble_document_missing "store-trouble-document-missing" (hash, subject);
    store_trouble_photo_unkept "store-trouble-photo-unkept" (hash, subject);
    store_trouble_photo_missing "store-trouble-photo-missing" (hash, job);
    store_trouble_photo_altered "store-trouble-photo-altered" (hash, job);

    // What was saved of a damaged store.
    store_salvaged "store-salvaged" (into, lines);
    store_salvaged_counts "store-salvaged-counts" (entries, subjects, documents, photos);
    store_salvaged_all "store-salvaged-all" ();
    store_salvaged_not "store-salvaged-not" ();
    store_salvaged_item "store-salvaged-item" (what);
    store_salvaged_rest "store-salvaged-rest" (subject, saved, of, gone);
    store_salvaged_rest_after "store-salvaged-rest-after" (subject, saved, of, gone, after);
    store_salvaged_confirmed "store-salvaged-confirmed" (confirmed, saved);
    store_salvaged_table "store-salvaged-table" (table, why);
    store_row_differs "store-row-differs" ();
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("store", super::MESSAGES);
}
