//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/procedure.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    // Where something stands in a file.
    spot "spot" (line, column);
    spot_in_file "spot-in-file" (file, line, column);
    place "place" (spot, pointer);

    // What is wrong with a file, and where.
    problem_at "problem-at" (place, what);
    problem_in_part "problem-in-part" (place, what);

    // Bytes into JSON into the format.
    problem_too_large "problem-too-large" (most);
    problem_not_utf8 "problem-not-utf8" (byte);
    problem_not_json "problem-not-json" (said);
    problem_format "problem-format" (found, wanted);
    problem_no_format "problem-no-format" (wanted);
    problem_key_twice "problem-key-twice" ();
    problem_no_field "problem-no-field" (field, known);
    problem_no_field_near "problem-no-field-near" (field, near);
    problem_no_variant "problem-no-variant" (value, known);
    problem_no_variant_near "problem-no-variant-near" (value, near);
    problem_missing "problem-missing" (field);
    problem_misfit "problem-misfit" (said);
    problem_empty "problem-empty" (field);

    // How much there may be.
    problem_bound "problem-bound" (what, is, least, most);
    problem_long_name "problem-long-name" (begin, length, most);
    problem_starts "problem-starts" (most);
    problem_state "problem-state" (most);
    problem_outcomes "problem-outcomes" (most);

    // Names, values and labels.
    problem_name "problem-name" (name);
    problem_name_taken "problem-name-taken" (name, place);
    problem_twice "problem-twice" (name);
    problem_value_name "problem-value-name" (value);
    problem_no_value "problem-no-value" (value, name);
    problem_no_value_but "problem-no-value-but" (value, name, choices);
    problem_label_empty "problem-label-empty" ();
    problem_label_id "problem-label-id" (label);
    problem_key_label "problem-key-label" (key);
    problem_key_without "problem-key-without" (key);
    problem_key_usual "problem-key-usual" (key);
    problem_key_usual_kind "problem-key-usual-kind" (key, kind);
    problem_key_rules "problem-key-rules" (key);
    problem_key_not_spare "problem-key-not-spare" (key, entry, step);
    problem_key_ends "problem-key-ends" (chart);
    problem_no_step "problem-no-step" (step);
    problem_no_permit "problem-no-permit" (permit);
    problem_no_sign_off "problem-no-sign-off" (sign);
    problem_no_item "problem-no-item" (item);
    problem_no_condition "problem-no-condition" (name);
    problem_no_gate "problem-no-gate" (name);

    // Rules beyond the shape.
    problem_never_fresh "problem-never-fresh" ();
    problem_follows "problem-follows" (name);
    problem_action_idle "problem-action-idle" ();
    problem_action_alone "problem-action-alone" (name);
    problem_asked_by "problem-asked-by" (steps);
    problem_no_earlier_phase "problem-no-earlier-phase" (phase);
    problem_no_earlier_step "problem-no-earlier-step" (step);
    problem_ring "problem-ring" (steps);
    problem_skip_writes "problem-skip-writes" (name);
    problem_skip_moves "problem-skip-moves" ();
    problem_skip_permit "problem-skip-permit" ();
    problem_danger_doing "problem-danger-doing" ();
    problem_contradict "problem-contradict" (name);
    problem_wait_minutes "problem-wait-minutes" (minutes, most);
    problem_wait_for "problem-wait-for" ();
    problem_wait_since "problem-wait-since" ();
    problem_wait_attended "problem-wait-attended" ();
    problem_wait_timer "problem-wait-timer" ();
    problem_pieces "problem-pieces" (pieces, most, item);
    problem_all_of "problem-all-of" (item);
    problem_count_twice "problem-count-twice" (item);
    problem_or_none "problem-or-none" (item);
    problem_on_decides "problem-on-decides" (entry);

    // Entries and their classes.
    problem_entry_twice "problem-entry-twice" (entry);
    problem_class_left_out "problem-class-left-out" (kind, class);
    problem_class_never "problem-class-never" (kind, class, choices);
    problem_not_yet_alone "problem-not-yet-alone" ();
    problem_must_hold "problem-must-hold" (class);
    problem_optional_decides "problem-optional-decides" ();
    problem_hands_did "problem-hands-did" ();
    problem_all_not_yet "problem-all-not-yet" ();
    problem_optional_sign "problem-optional-sign" ();
    problem_no_entry "problem-no-entry" (entry, wanted);
    problem_entry_kind "problem-entry-kind" (entry, wanted);
    entry_of_kind "entry-of-kind" (kind);
    entry_in_unit "entry-in-unit" (kind, unit);
    problem_good_holds "problem-good-holds" (class);
    problem_good_none "problem-good-none" (class);
    problem_good_all "problem-good-all" ();
    problem_balance "problem-balance" ();
    problem_choice "problem-choice" ();
    problem_several "problem-several" ();
    problem_not_ranked "problem-not-ranked" (class);
    problem_rank_idle "problem-rank-idle" (class);
    problem_decision "problem-decision" ();
    problem_decision_of "problem-decision-of" (name);
    problem_decision_when "problem-decision-when" ();
    problem_decision_idle "problem-decision-idle" (class);
    problem_decision_no_entry "problem-decision-no-entry" (entry);
    problem_decision_sign "problem-decision-sign" (entry);
    problem_decision_later "problem-decision-later" (entry);
    problem_decision_relies "problem-decision-relies" (step);
    problem_decision_class "problem-decision-class" (entry, class, choices);
    problem_decision_size "problem-decision-size" (count, most);
    problem_decision_hole "problem-decision-hole" (combination, count);
    problem_decision_overlap "problem-decision-overlap" (first, second, combination);
    problem_decision_never "problem-decision-never" ();

    // Predicates.
    predicate_at "predicate-at" (what, character);
    predicate_in_term "predicate-in-term" (term, said);
    predicate_long "predicate-long" (most);
    predicate_deep "predicate-deep" (most);
    predicate_character "predicate-character" (character);
    predicate_joint "predicate-joint" (token);
    predicate_mark "predicate-mark" (mark, found);
    predicate_token "predicate-token" (token);
    predicate_end "predicate-end" ();
    predicate_not_wanted "predicate-not-wanted" (wanted, token);
    predicate_wanted_at_end "predicate-wanted-at-end" (wanted);
    predicate_equal "predicate-equal" (wanted);
    predicate_name "predicate-name" ();
    predicate_value "predicate-value" ();
    predicate_step "predicate-step" ();
    predicate_sign_off "predicate-sign-off" ();
    predicate_gate "predicate-gate" ();
    predicate_item "predicate-item" ();
    predicate_number "predicate-number" ();
    predicate_vehicle_action "predicate-vehicle-action" ();
    predicate_zone "predicate-zone" ();
    predicate_part "predicate-part" ();
    predicate_tag "predicate-tag" ();
    predicate_full_stop "predicate-full-stop" (word);
    predicate_empty "predicate-empty" ();
    predicate_no_number "predicate-no-number" (number);
    predicate_parts "predicate-parts" (most);
    predicate_pieces "predicate-pieces" (most);
    predicate_write_value "predicate-write-value" (name);
    predicate_no_term "predicate-no-term" (name);
    predicate_term_ring "predicate-term-ring" (term);
    predicate_terms_deep "predicate-terms-deep" (most);
    predicate_no_variable "predicate-no-variable" (name);
    predicate_write_unknown "predicate-write-unknown" (name);
    predicate_unknown_yes "predicate-unknown-yes" (name);
    predicate_gate_here "predicate-gate-here" (name);
    predicate_fact_here "predicate-fact-here" (name);
    predicate_condition_here "predicate-condition-here" (name);
    predicate_no_gate "predicate-no-gate" (name);
    predicate_never_unknown "predicate-never-unknown" (name);
    predicate_tray_not_clear "predicate-tray-not-clear" ();
    predicate_not_here "predicate-not-here" (what);
    predicate_doing_here "predicate-doing-here" ();
    predicate_no_vehicle_action "predicate-no-vehicle-action" (action);
    predicate_nowhere "predicate-nowhere" (name);

    // The use of parts.
    part_no_file "part-no-file" (part, file);
    part_together "part-together" (most);
    part_whole "part-whole" (most);
    part_use "part-use" (said);
    part_name "part-name" (part);
    part_again "part-again" (part);
    part_too_many "part-too-many" (most);
    part_in_part "part-in-part" ();
    part_id "part-id" (id, file);
    part_phases_only "part-phases-only" ();
    part_steps_only "part-steps-only" ();
    part_no_setting "part-no-setting" (name);
    part_setting_idle "part-setting-idle" (name);
    part_setting_wanted "part-setting-wanted" (part, name, meaning);
    part_no_such_setting "part-no-such-setting" (part, name);
    part_term_wanted "part-term-wanted" (term, meaning);
    part_in_checklist "part-in-checklist" (id);
    part_in_file "part-in-file" (file, id);

    // A checklist's texts in another language.
    texts_of_other "texts-of-other" (found, wanted);
    texts_of_revision "texts-of-revision" (found, wanted);
    texts_language "texts-language" (language);
    texts_no_place "texts-no-place" (place);
    texts_missing "texts-missing" (place, original);
    texts_empty "texts-empty" ();
    texts_long "texts-long" (length, most);
    texts_number "texts-number" (numbers, original);
    texts_fit "texts-fit" (number, language);

    // What a checklist needs and a spec sheet lacks.
    lacks_key "lacks-key" (who, key, sheet, kind);
    lacks_kind "lacks-kind" (who, key, sheet, kind, found);
    lacks_fact "lacks-fact" (key, sheet, found, choices);
    lacks_of_entry "lacks-of-entry" (entry, step);
    lacks_of_fact "lacks-of-fact" (fact);
    lacks_of_item "lacks-of-item" (item);
    lacks_count "lacks-count" (key, sheet, found, least, most);
    lacks_fasteners "lacks-fasteners" (key, sheet, fasteners, there);

    // What is done, as a run tells it.
    action_step "action-step" (step, title);
    action_begin "action-begin" (step);
    action_leave "action-leave" (step);
    action_done "action-done" (step);
    action_done_as "action-done-as" (step, classes);
    action_vehicle "action-vehicle" (action, title);
    action_sign "action-sign" (sign);
    action_skip "action-skip" (step);
    action_void "action-void" (step);
    action_correct "action-correct" (step);
    action_correct_as "action-correct-as" (step, classes);
    action_observe "action-observe" (condition, value);
    action_expire "action-expire" (gate);
    action_piece_off "action-piece-off" ();
    action_piece_back "action-piece-back" ();
    action_finish "action-finish" ();
    action_stop "action-stop" ();

    // Why there is no plan.
    procedure_plan_over "procedure-plan-over" ();
    procedure_plan_people "procedure-plan-people" (most);
    procedure_plan_crew "procedure-plan-crew" (people, problems);
    procedure_plan_no_way "procedure-plan-no-way" ();
    procedure_plan_not_found "procedure-plan-not-found" (moments);
    procedure_plan_cancelled "procedure-plan-cancelled" ();

    // How far a proof is.
    procedure_progress "procedure-progress" (runs, doing);
    procedure_runs_plain "procedure-runs-plain" ();
    procedure_runs_one_void "procedure-runs-one-void" ();
    procedure_runs_one_observation "procedure-runs-one-observation" ();
    procedure_looking_searching "procedure-looking-searching" ();
    procedure_looking_safe_to_leave "procedure-looking-safe-to-leave" ();
    procedure_looking_end "procedure-looking-end" ();
    procedure_looking_safe_stop "procedure-looking-safe-stop" ();

    // What a proof claims, what it takes for granted, and what it does not claim.
    claim_safe "claim-safe" ();
    claim_honest "claim-honest" ();
    claim_can_finish "claim-can-finish" ();
    claim_can_stop "claim-can-stop" ();
    claim_nothing_left "claim-nothing-left" ();
    claim_all_used "claim-all-used" ();
    assumed_entered "assumed-entered" ();
    assumed_not_entered "assumed-not-entered" ();
    assumed_classes "assumed-classes" ();
    assumed_not_yet "assumed-not-yet" ();
    not_claimed_voids "not-claimed-voids" ();
    not_claimed_other_vehicles "not-claimed-other-vehicles" ();
    not_claimed_void "not-claimed-void" ();
    not_claimed_observations "not-claimed-observations" ();
    not_claimed_observation "not-claimed-observation" ();
    not_claimed_emergencies "not-claimed-emergencies" ();

    // What refutes a checklist.
    finding_danger "finding-danger" (danger, text);
    finding_danger_piece_off "finding-danger-piece-off" (danger, text);
    finding_danger_at_start "finding-danger-at-start" (danger, text);
    finding_danger_never "finding-danger-never" (danger);
    finding_no_end "finding-no-end" ();
    finding_no_stop "finding-no-stop" ();
    finding_aged "finding-aged" (step);
    finding_no_recover "finding-no-recover" (condition, value);
    finding_miscount "finding-miscount" ();
    finding_item_off "finding-item-off" (pieces, item);
    finding_attest_open "finding-attest-open" (sign);
    finding_step_open "finding-step-open" (step);
    finding_step_never "finding-step-never" (step);
    finding_never "finding-never" (action);
    finding_permit_lapse "finding-permit-lapse" (permit);
    finding_permit_renew "finding-permit-renew" (permit);
    finding_gate_lapse "finding-gate-lapse" (gate);
    finding_gate_renew "finding-gate-renew" (gate);
    finding_idle "finding-idle" (whose, name, value);
    idle_begin "idle-begin" (step);
    idle_leave "idle-leave" (step);
    idle_done "idle-done" (step);
    idle_vehicle_action "idle-vehicle-action" (action);
    idle_follow "idle-follow" ();
    finding_lost "finding-lost" (step, name, value);
    finding_not_good "finding-not-good" (step, entry, class);
    finding_counts "finding-counts" (step, pieces, item);
    finding_permit_for_ever "finding-permit-for-ever" (permit);
    finding_gate_for_ever "finding-gate-for-ever" (gate);
    finding_temperature "finding-temperature" (gate);
    finding_not_made "finding-not-made" (name, value);

    // What would close a finding.
    fix_none "fix-none" ();
    fix_step "fix-step" (test, field, step, spot);
    fix_vehicle_action "fix-vehicle-action" (test, action, spot);
    fix_end "fix-end" (test, field, spot);

    // What is odd.
    remark_step_needs "remark-step-needs" (step);
    remark_action_needs "remark-action-needs" (action);
    remark_attest "remark-attest" (sign);
    remark_item_not_back "remark-item-not-back" (item);
    remark_item_not_off "remark-item-not-off" (item);
    remark_item_unmoved "remark-item-unmoved" (item);
    remark_good "remark-good" (entry, step);
    remark_same "remark-same" (entry, step);
    remark_unread "remark-unread" (name);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("procedure", super::MESSAGES);
}
