//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/bay.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    // Why a use case failed.
    bay_checklist "bay-checklist" (problems);
    bay_sheet "bay-sheet" (problems);
    bay_texts "bay-texts" (problems);
    bay_sheet_lacks "bay-sheet-lacks" (problems);
    bay_shop_lacks "bay-shop-lacks" (names);
    bay_common_practice "bay-common-practice" ();
    bay_taken_from "bay-taken-from" (title, revision);
    bay_not_proved "bay-not-proved" (id, why);
    bay_not_proved_yet "bay-not-proved-yet" ();
    bay_needs_sheet "bay-needs-sheet" (id);
    bay_checklist_parts "bay-checklist-parts" (problems);
    bay_checklist_id "bay-checklist-id" (id);
    bay_checklist_built_in "bay-checklist-built-in" (id);
    bay_adopt_not_proved "bay-adopt-not-proved" (id);
    bay_not_on_shelf "bay-not-on-shelf" (id);
    bay_sheet_built_in "bay-sheet-built-in" (id);
    bay_sheet_not_kept "bay-sheet-not-kept" (problems);
    bay_sheet_draft "bay-sheet-draft" ();
    bay_sheet_id "bay-sheet-id" (id);
    bay_no_person "bay-no-person" ();
    bay_pin_asked "bay-pin-asked" (name);
    bay_pin_form "bay-pin-form" ();
    bay_pin_of_other "bay-pin-of-other" (name);
    bay_pin_first_own "bay-pin-first-own" (name);
    bay_pin_lead "bay-pin-lead" (name);
    bay_pin_second "bay-pin-second" (name);
    bay_no_pin "bay-no-pin" (name);
    bay_pin_hash "bay-pin-hash" (why);
    bay_tool "bay-tool" (problems);
    bay_photo_not_kept "bay-photo-not-kept" ();
    bay_backup_failed "bay-backup-failed" (why);
    bay_whole_path "bay-whole-path" (path);
    bay_no_job "bay-no-job" (job);
    bay_stale "bay-stale" (job);
    bay_refused "bay-refused" (sentences);
    bay_pinned "bay-pinned" (hash);
    bay_json "bay-json" (why);
    bay_sheet_field "bay-sheet-field" (key, said);
    bay_plan_folder "bay-plan-folder" ();
    bay_plan_numbers "bay-plan-numbers" ();
    bay_plan_no_folder "bay-plan-no-folder" ();

    // Why a checklist is not proved.
    bay_refuted "bay-refuted" (what);
    bay_refuted_by "bay-refuted-by" (what, run);
    bay_then "bay-then" (start, next);
    bay_undecided "bay-undecided" (states);

    // Where a plan has somebody go.
    bay_zone "bay-zone" (zone);

    // What is said of a store and its backups.
    bay_mended "bay-mended" (trouble);
    bay_own_words "bay-own-words" (job, language, why);
    bay_called_shop "bay-called-shop" ();
    bay_age_future "bay-age-future" ();
    bay_age_minutes "bay-age-minutes" (number);
    bay_age_hours "bay-age-hours" (number);
    bay_age_days "bay-age-days" (number);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("bay", super::MESSAGES);
}
