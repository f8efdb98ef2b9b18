//! What this program says to a person, as message ids with arguments. The sentences stand in `en/cli.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    // How the program ends.
    cli_does_not_load "cli-does-not-load" (file, problems);
    cli_sheet_lacks "cli-sheet-lacks" (problems);
    cli_not_printed "cli-not-printed" (why);
    cli_trouble "cli-trouble" (trouble);
    cli_nothing_printed "cli-nothing-printed" (troubles);

    // What is wrong with a walk script.
    cli_script "cli-script" (file, what);
    cli_script_json "cli-script-json" (said);
    cli_script_format "cli-script-format" (found, wanted);
    cli_script_no_role "cli-script-no-role" (person);
    cli_script_line "cli-script-line" (line, what);
    cli_script_nothing "cli-script-nothing" (words);
    cli_script_nobody "cli-script-nobody" (person);
    cli_script_minutes "cli-script-minutes" ();
    cli_script_no_command "cli-script-no-command" (command, said);
    cli_script_no_who "cli-script-no-who" ();
    cli_script_no_photo "cli-script-no-photo" (photo);
    cli_no_time "cli-no-time" (time);

    // A walk.
    cli_walk_job "cli-walk-job" (job, repair_order, title);
    cli_walk_demo "cli-walk-demo" ();
    cli_walk_goes_on "cli-walk-goes-on" (line);
    cli_walk_refused "cli-walk-refused" (sentences);
    cli_walk_not_expected "cli-walk-not-expected" (line, command, refusal, sentences);
    cli_walk_other_refusal "cli-walk-other-refusal" (line, command, refusal, expected, sentences);
    cli_walk_taken "cli-walk-taken" (line, command, expected);

    // What happened on a job.
    cli_event_started "cli-event-started" (checklist, revision);
    cli_event_introduced "cli-event-introduced" (name, role);
    cli_event_begun "cli-event-begun" (step);
    cli_event_left "cli-event-left" (step);
    cli_event_entered "cli-event-entered" (entry, value, class);
    cli_event_done "cli-event-done" (step);
    cli_event_done_signed "cli-event-done-signed" (step, signs);
    cli_event_vehicle_action "cli-event-vehicle-action" (action);
    cli_event_signed "cli-event-signed" (sign);
    cli_event_skipped "cli-event-skipped" (step, reason);
    cli_event_voided "cli-event-voided" (step, reason);
    cli_event_voided_also "cli-event-voided-also" (step, also, reason);
    cli_event_corrected "cli-event-corrected" (step);
    cli_event_observed "cli-event-observed" (condition, value, reason);
    cli_event_observed_undone "cli-event-observed-undone" (condition, value, undone, reason);
    cli_event_expired "cli-event-expired" (gate);
    cli_event_explained "cli-event-explained" (step, reason);
    cli_event_found "cli-event-found" (what, urgency, photos);
    cli_event_dealt_with "cli-event-dealt-with" (number, text);
    cli_event_asked "cli-event-asked" (what, step);
    cli_event_answered "cli-event-answered" (number, class);
    cli_event_went_on "cli-event-went-on" (number, reason);
    cli_event_piece_off "cli-event-piece-off" (piece, count);
    cli_event_piece_back "cli-event-piece-back" (number, count);
    cli_event_piece_gone "cli-event-piece-gone" (number, count, reason);
    cli_event_taken_back "cli-event-taken-back" (number, reason);
    cli_event_finished "cli-event-finished" ();
    cli_event_stopped "cli-event-stopped" (reason);
    cli_event_clock "cli-event-clock" (seconds);
    cli_event_lapses "cli-event-lapses" (event, names);
    cli_step "cli-step" (title, id);
    cli_signed_by "cli-signed-by" (sign, name);
    cli_next "cli-next" (start, next);
    cli_value_because "cli-value-because" (value, reason);
    cli_value_signed "cli-value-signed" (name);
    cli_value_torque "cli-value-torque" (stages, unit, tool);
    cli_value_then "cli-value-then" (start, next);
    cli_value_photo "cli-value-photo" (width, height, hash);

    // What is asked for.
    cli_to_begin "cli-to-begin" (step);
    cli_to_leave "cli-to-leave" (step);
    cli_to_enter "cli-to-enter" (entry, step);
    cli_to_be_done "cli-to-be-done" (step);
    cli_to_work "cli-to-work" (step);
    cli_to_act "cli-to-act" (action);
    cli_to_sign "cli-to-sign" (sign);
    cli_to_sign_again "cli-to-sign-again" ();
    cli_to_skip "cli-to-skip" (step);
    cli_to_void "cli-to-void" (step);
    cli_to_correct "cli-to-correct" (step);
    cli_to_observe "cli-to-observe" (condition, value);
    cli_to_explain "cli-to-explain" (step);
    cli_to_find "cli-to-find" (what);
    cli_to_deal_with "cli-to-deal-with" (number);
    cli_to_ask "cli-to-ask" (what);
    cli_to_answer "cli-to-answer" (number);
    cli_to_go_on "cli-to-go-on" (number);
    cli_to_take_off "cli-to-take-off" (piece);
    cli_to_put_back "cli-to-put-back" (number);
    cli_to_take_back "cli-to-take-back" (number);
    cli_to_finish "cli-to-finish" ();
    cli_to_stop "cli-to-stop" ();

    // A proof.
    cli_proof_meter "cli-proof-meter" (seconds, states, rate);
    cli_proof_meter_search "cli-proof-meter-search" (search, states, waiting);
    cli_proof_of "cli-proof-of" (checklist, revision, engine);
    cli_proof_search "cli-proof-search" (runs, states, transitions, depth, memory);
    cli_proof_memory "cli-proof-memory" (search);
    cli_proof_states "cli-proof-states" (search);
    cli_proof_cancelled "cli-proof-cancelled" (search);
    cli_proof_holds "cli-proof-holds" ();
    cli_proof_fails "cli-proof-fails" ();
    cli_proof_open "cli-proof-open" ();
    cli_proof_at "cli-proof-at" (place);
    cli_proof_close "cli-proof-close" (fix);
    cli_proof_odd "cli-proof-odd" (what);
    cli_proof_finish "cli-proof-finish" ();
    cli_proof_finish_row "cli-proof-finish-row" (condition, value, can);
    cli_proof_always "cli-proof-always" ();
    cli_proof_never "cli-proof-never" ();
    cli_proof_sometimes "cli-proof-sometimes" (can, places);
    cli_proof_assumed "cli-proof-assumed" ();
    cli_proof_not_claimed "cli-proof-not-claimed" ();
    cli_proved "cli-proved" (states);
    cli_refuted "cli-refuted" (findings);
    cli_not_decided "cli-not-decided" (states);

    // A plan.
    cli_plan_of_what "cli-plan-of-what" ();
    cli_plan_no_start "cli-plan-no-start" ();
    cli_plan_row "cli-plan-row" (from, until, what);
    cli_plan_row_person "cli-plan-row-person" (from, until, person, what);
    cli_plan_start "cli-plan-start" (title);
    cli_plan_leave "cli-plan-leave" (title);
    cli_plan_action "cli-plan-action" (title);
    cli_plan_walk "cli-plan-walk" (zone);
    cli_plan_sign "cli-plan-sign" (title);
    cli_plan_correct "cli-plan-correct" (title);
    cli_plan_wait "cli-plan-wait" (what, from, until, meanwhile);
    cli_plan_attended "cli-plan-attended" ();
    cli_plan_other_work "cli-plan-other-work" ();
    cli_plan_idle "cli-plan-idle" (minutes);
    cli_plan_running "cli-plan-running" (what, minutes);
    cli_plan_can "cli-plan-can" (step, minutes, costs);
    cli_plan_no_time "cli-plan-no-time" ();
    cli_plan_longer "cli-plan-longer" (minutes);
    cli_plan_no_way "cli-plan-no-way" ();
    cli_plan_as_far "cli-plan-as-far" (costs);
    cli_plan_only "cli-plan-only" ();
    cli_plan_exact "cli-plan-exact" (minutes);
    cli_plan_bound "cli-plan-bound" (minutes, bound, longer);
    cli_plan_file_order "cli-plan-file-order" (minutes);

    // Jobs and records.
    cli_job_row "cli-job-row" (events, state);
    cli_job_demo "cli-job-demo" (row);
    cli_no_job_id "cli-no-job-id" (job);
    cli_record_form "cli-record-form" (file);
    cli_record_customer "cli-record-customer" ();
    cli_record_in "cli-record-in" (file);
    cli_tables_in "cli-tables-in" (folder);

    // A store.
    cli_store_holds "cli-store-holds" (events, photos, documents);
    cli_store_newest "cli-store-newest" (seq, hash);
    cli_store_rebuilt "cli-store-rebuilt" (jobs);
    cli_own_adopted "cli-own-adopted" (id, revision, name);
    cli_own_row "cli-own-row" (id, revision, title);
    cli_own_taken_in "cli-own-taken-in" (row);
    cli_own_trouble "cli-own-trouble" (trouble);
    cli_own_nobody "cli-own-nobody" (name);
    cli_own_written "cli-own-written" (file);
    cli_store_swept "cli-store-swept" (photos);
    cli_backed_up "cli-backed-up" (events, photos, copied, folder);
    cli_backup_removed "cli-backup-removed" (folder);
    cli_backup_lacks "cli-backup-lacks" (trouble);
    cli_backup_no_folder "cli-backup-no-folder" (folder, why);
    cli_backup_none "cli-backup-none" (folder);
    cli_backup_bad "cli-backup-bad" (why);
    cli_backup_is "cli-backup-is" (age, seq, device, events, photos);
    cli_backup_verified "cli-backup-verified" ();
    cli_backup_not_whole "cli-backup-not-whole" (count);
    cli_restored_why "cli-restored-why" ();
    cli_restored "cli-restored" (folder, age, seq);
    cli_restored_aside "cli-restored-aside" (folder);
    cli_restored_all "cli-restored-all" ();
    cli_restored_lacks "cli-restored-lacks" (entries);
    cli_restored_unknown "cli-restored-unknown" ();
    cli_restored_newer "cli-restored-newer" (called, restored, there, lacking);
    cli_restored_salvage "cli-restored-salvage" ();
    cli_restored_missing "cli-restored-missing" (trouble);
    cli_gone_on_was "cli-gone-on-was" (trouble);
    cli_gone_on "cli-gone-on" ();

    // A new checklist.
    cli_new_written "cli-new-written" (file);
    cli_new_name "cli-new-name" (file, ending);

    // The figures that are listed.
    cli_values "cli-values" ();
    cli_perhaps "cli-perhaps" (is);
    cli_often "cli-often" (is);
    cli_perhaps_often "cli-perhaps-often" (is);

    // Keys of several figures.
    cli_key_reading "cli-key-reading" ();
    cli_key_mark "cli-key-mark" ();
    cli_key_temp "cli-key-temp" ();
    cli_key_chart "cli-key-chart" ();
    cli_key_agree "cli-key-agree" ();
    cli_key_floor "cli-key-floor" ();
    cli_key_idle "cli-key-idle" ();
    cli_key_park "cli-key-park" ();
    cli_key_cycled "cli-key-cycled" ();
    cli_key_started "cli-key-started" ();
    cli_key_changed "cli-key-changed" ();
    cli_key_now "cli-key-now" ();
    cli_key_addition "cli-key-addition" ();
    cli_key_tool "cli-key-tool" ();
    cli_key_class "cli-key-class" ();
    cli_key_due "cli-key-due" ();
    cli_key_calibrated "cli-key-calibrated" ();
    cli_key_months "cli-key-months" ();
    cli_key_on "cli-key-on" ();
    cli_key_ambient "cli-key-ambient" ();

    // Keys of the figure "level".
    cli_level "cli-level" ();

    // Keys of the figure "diagnosis".
    cli_diagnosis "cli-diagnosis" ();
    cli_diagnosis_level "cli-diagnosis-level" ();
    cli_diagnosis_tried "cli-diagnosis-tried" ();

    // Keys of the figure "topup".
    cli_topup "cli-topup" ();
    cli_topup_gain "cli-topup-gain" ();
    cli_topup_share "cli-topup-share" ();
    cli_topup_pour "cli-topup-pour" ();

    // Keys of the figure "gain".
    cli_gain "cli-gain" ();

    // Keys of the figure "refill".
    cli_refill "cli-refill" ();
    cli_refill_drained "cli-refill-drained" ();
    cli_refill_poured "cli-refill-poured" ();
    cli_refill_density "cli-refill-density" ();
    cli_refill_holdback "cli-refill-holdback" ();
    cli_refill_temp "cli-refill-temp" ();
    cli_refill_gain "cli-refill-gain" ();

    // Keys of the figure "balance".
    cli_balance "cli-balance" ();
    cli_balance_drained "cli-balance-drained" ();
    cli_balance_added "cli-balance-added" ();
    cli_balance_density "cli-balance-density" ();
    cli_balance_unseen "cli-balance-unseen" ();
    cli_balance_capacity "cli-balance-capacity" ();

    // Keys of the figure "coil".
    cli_coil "cli-coil" ();
    cli_coil_ohms "cli-coil-ohms" ();
    cli_coil_temp "cli-coil-temp" ();
    cli_coil_tempoff "cli-coil-tempoff" ();
    cli_coil_leads "cli-coil-leads" ();
    cli_coil_meter "cli-coil-meter" ();
    cli_coil_limits "cli-coil-limits" ();
    cli_coil_at "cli-coil-at" ();

    // Keys of the figure "code".
    cli_code "cli-code" ();
    cli_code_codes "cli-code-codes" ();
    cli_code_bytes "cli-code-bytes" ();

    // Keys of the figure "vin".
    cli_vin "cli-vin" ();
    cli_vin_vin "cli-vin-vin" ();

    // Keys of the figure "torque".
    cli_torque "cli-torque" ();
    cli_torque_torque "cli-torque-torque" ();
    cli_torque_target "cli-torque-target" ();
    cli_torque_tolerance "cli-torque-tolerance" ();
    cli_torque_spec "cli-torque-spec" ();
    cli_torque_stage "cli-torque-stage" ();

    // Keys of the figure "tool".
    cli_tool "cli-tool" ();
    cli_tool_setting "cli-tool-setting" ();

    // Keys of the figure "adapter".
    cli_adapter "cli-adapter" ();
    cli_adapter_torque "cli-adapter-torque" ();
    cli_adapter_tool "cli-adapter-tool" ();
    cli_adapter_adapter "cli-adapter-adapter" ();
    cli_adapter_angle "cli-adapter-angle" ();

    // Keys of the figure "angle".
    cli_angle "cli-angle" ();
    cli_angle_target "cli-angle-target" ();
    cli_angle_turned "cli-angle-turned" ();

    // Keys of the figure "bolt".
    cli_bolt "cli-bolt" ();
    cli_bolt_torque "cli-bolt-torque" ();
    cli_bolt_thread "cli-bolt-thread" ();
    cli_bolt_grade "cli-bolt-grade" ();

    // Keys of the figure "order".
    cli_order "cli-order" ();
    cli_order_pattern "cli-order-pattern" ();
    cli_order_bolt "cli-order-bolt" ();
    cli_order_done "cli-order-done" ();

    // Keys of the figure "cooldown".
    cli_cooldown "cli-cooldown" ();
    cli_cooldown_reading "cli-cooldown-reading" ();
    cli_cooldown_ambientoff "cli-cooldown-ambientoff" ();
    cli_cooldown_limit "cli-cooldown-limit" ();
    cli_cooldown_probe "cli-cooldown-probe" ();
    cli_cooldown_off "cli-cooldown-off" ();
    cli_cooldown_place "cli-cooldown-place" ();

    // Keys of the figure "touch".
    cli_touch "cli-touch" ();
    cli_touch_contact "cli-touch-contact" ();
    cli_touch_gloves "cli-touch-gloves" ();

    // Keys of the figure "surface".
    cli_surface "cli-surface" ();
    cli_surface_shows "cli-surface-shows" ();
    cli_surface_set "cli-surface-set" ();
    cli_surface_surface "cli-surface-surface" ();
    cli_surface_emissivity "cli-surface-emissivity" ();

    // Keys of the figure "labour".
    cli_labour "cli-labour" ();
    cli_labour_event "cli-labour-event" ();
    cli_labour_until "cli-labour-until" ();
    cli_labour_expected "cli-labour-expected" ();

    // Keys of the figure "estimate".
    cli_estimate "cli-estimate" ();
    cli_estimate_currency "cli-estimate-currency" ();
    cli_estimate_part "cli-estimate-part" ();
    cli_estimate_labor "cli-estimate-labor" ();
    cli_estimate_may_turn_up "cli-estimate-may-turn-up" ();
    cli_estimate_line_form "cli-estimate-line-form" ();
    cli_estimate_up_to_form "cli-estimate-up-to-form" ();

    // What is wrong with what was typed for a figure.
    cli_usage "cli-usage" (why, lines);
    cli_wrong "cli-wrong" (key, text, why);
    cli_no_figure "cli-no-figure" (name, known);
    cli_no_key_value "cli-no-key-value" (text);
    cli_no_key "cli-no-key" (figure, key);
    cli_needs "cli-needs" (figure, key);
    cli_more_than_once "cli-more-than-once" (key, count);
    cli_yes_or_no "cli-yes-or-no" ();
    cli_unit_missing "cli-unit-missing" (example);
    cli_whole_number "cli-whole-number" ();
    cli_day_form "cli-day-form" ();
    cli_gain_form "cli-gain-form" ();
    cli_bytes_form "cli-bytes-form" ();
    cli_event_form "cli-event-form" ();
    cli_form_mark "cli-form-mark" ();
    cli_form_level "cli-form-level" ();
    cli_form_tried "cli-form-tried" ();
    cli_form_addition "cli-form-addition" ();
    cli_form_drained "cli-form-drained" ();
    cli_form_amount "cli-form-amount" ();
    cli_form_density "cli-form-density" ();
    cli_form_limits "cli-form-limits" ();
    cli_form_meter "cli-form-meter" ();
    cli_form_tool "cli-form-tool" ();
    cli_form_target "cli-form-target" ();
    cli_form_bolt "cli-form-bolt" ();
    cli_form_reading "cli-form-reading" ();
    cli_form_emissivity "cli-form-emissivity" ();
    cli_level_words "cli-level-words" ();
    cli_tried_words "cli-tried-words" ();
    cli_pattern_words "cli-pattern-words" ();
    cli_place_words "cli-place-words" ();
    cli_surface_words "cli-surface-words" ();
    cli_stages "cli-stages" (count);
    cli_temp_missing "cli-temp-missing" ();
    cli_gain_missing "cli-gain-missing" ();
    cli_tolerance_missing "cli-tolerance-missing" ();
    cli_spec_missing "cli-spec-missing" ();
    cli_chart_missing "cli-chart-missing" ();
    cli_limits_missing "cli-limits-missing" ();
    cli_touch_limit_missing "cli-touch-limit-missing" ();
    cli_codes_or_bytes "cli-codes-or-bytes" ();
    cli_due_or_calibrated "cli-due-or-calibrated" ();
    cli_surface_or_emissivity "cli-surface-or-emissivity" ();
    cli_no_chart "cli-no-chart" (key);
    cli_no_range "cli-no-range" (key);
    cli_no_torque "cli-no-torque" (key);
    cli_no_value "cli-no-value" (key);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("cli", super::MESSAGES);
}
