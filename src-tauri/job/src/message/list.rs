//! Every message there is. One line each: the function that makes it, its id, the names of its arguments.

panside_messages::messages! {
    labels:
    // Kinds of entry.
    "kind-sign-off"
    "kind-reading"
    "kind-level"
    "kind-coil"
    "kind-coils"
    "kind-cool-down"
    "kind-balance"
    "kind-count"
    "kind-torque"
    "kind-photo"
    "kind-choice"
    "kind-several"
    "kind-decision"
    "kind-scan"
    "kind-timer"
    "kind-note"
    "kind-estimate"
    "kind-authorization"

    // Classes of each kind; those of choices are what their buttons say.
    "class-sign-off-signed"
    "class-reading-read"
    "class-reading-inside"
    "class-reading-outside"
    "class-level-below"
    "class-level-in"
    "class-level-above"
    "class-level-unclear"
    "class-level-not-reached"
    "class-coil-inside"
    "class-coil-outside"
    "class-coil-open"
    "class-coil-short"
    "class-coil-unclear"
    "class-coils-inside"
    "class-coils-one"
    "class-coils-several"
    "class-coils-unclear"
    "class-cool-down-cool"
    "class-cool-down-hot"
    "class-balance-closes"
    "class-balance-differs"
    "class-balance-explained"
    "class-count-all"
    "class-count-short"
    "class-count-accounted"
    "class-torque-inside"
    "class-torque-outside"
    "class-torque-by-exception"
    "class-photo-taken"
    "class-scan-read"
    "class-timer-elapsed"
    "class-note-written"
    "class-estimate-estimated"
    "class-authorization-agreed"
    "class-authorization-declined"
    "class-authorization-pending"
    "class-authorization-below";

    // Why a command is refused.
    refused_finished "refused-finished" ();
    refused_stopped "refused-stopped" ();
    refused_ending "refused-ending" ();
    refused_not_started "refused-not-started" ();
    refused_not_in_job "refused-not-in-job" (step);
    refused_undecided "refused-undecided" (step);
    refused_phase "refused-phase" (first);
    refused_after "refused-after" (first);
    refused_needs "refused-needs" (what);
    refused_finish "refused-finish" ();
    refused_asked "refused-asked" (step);
    refused_not_declined "refused-not-declined" (what);
    refused_taken_back "refused-taken-back" (what);
    refused_dealt_with "refused-dealt-with" (what);
    refused_nothing_said "refused-nothing-said" ();
    refused_piece_count "refused-piece-count" (count, most);
    refused_pieces_off "refused-pieces-off" (piece, off);
    refused_stop "refused-stop" ();
    refused_permit_missing "refused-permit-missing" (permit, step);
    refused_permit_lapsed "refused-permit-lapsed" (permit, step);
    refused_busy "refused-busy" (step);
    refused_in_progress "refused-in-progress" (step);
    refused_not_in_progress "refused-not-in-progress" (step);
    refused_worked "refused-worked" (step);
    refused_not_worked "refused-not-worked" (step);
    refused_voided "refused-voided" (step);
    refused_not_voided "refused-not-voided" (step);
    refused_skipped "refused-skipped" (step);
    refused_not_missed "refused-not-missed" (step);
    refused_may_not_skip "refused-may-not-skip" (step);
    refused_while "refused-while" (step);
    refused_stands "refused-stands" (step);
    refused_same_vehicle_action "refused-same-vehicle-action" (what);
    refused_same_value "refused-same-value" (what, value);
    refused_danger "refused-danger" (signal, danger);
    refused_no_such "refused-no-such" (kind, name);
    refused_too_long "refused-too-long" (start, most);
    refused_too_many "refused-too-many" (found, most);
    refused_no_reason "refused-no-reason" ();
    refused_no_person "refused-no-person" ();
    refused_no_role "refused-no-role" (name, role);
    refused_missing "refused-missing" (step);
    refused_not_yet "refused-not-yet" (entry);
    refused_class "refused-class" (entry, class);

    // Signatures.
    refused_no_signature "refused-no-signature" ();
    refused_sign_untrue "refused-sign-untrue" (sign);
    refused_sign_valid "refused-sign-valid" (sign);
    refused_sign_not_asked "refused-sign-not-asked" (sign, step);
    refused_sign_twice "refused-sign-twice" (sign);
    refused_sign_same_person "refused-sign-same-person" (sign, name);
    refused_sign_other_person "refused-sign-other-person" (sign, name);
    refused_sign_role "refused-sign-role" (sign, by);
    refused_pin "refused-pin" (name, person);
    refused_sign_with_done "refused-sign-with-done" (sign);

    // What is missing at a step.
    missing_entry "missing-entry" (entry);
    missing_signature "missing-signature" (sign, by);
    missing_answer_anew "missing-answer-anew" (entry, estimate);

    // What does not hold.
    unmet_value "unmet-value" (what, is, wants);
    unmet_gate "unmet-gate" (what, is, wants);
    unmet_gate_settled "unmet-gate-settled" (what, is);
    unmet_gate_unknown "unmet-gate-unknown" (what, wants);
    unmet_gate_read "unmet-gate-read" (what, last, wants);
    unmet_gate_at_most "unmet-gate-at-most" (what, last, limit, name);
    unmet_gate_at_least "unmet-gate-at-least" (what, last, limit, name);
    unmet_gate_within "unmet-gate-within" (what, last, low, high, name);
    unmet_gate_lost "unmet-gate-lost" (what, last, minutes);
    unmet_gate_restarted "unmet-gate-restarted" (what, last);
    unmet_worked "unmet-worked" (step);
    unmet_not_worked "unmet-not-worked" (step);
    unmet_signed "unmet-signed" (sign, step);
    unmet_not_signed "unmet-not-signed" (sign);
    unmet_empty "unmet-empty" (item, off);
    unmet_piece_off "unmet-piece-off" (piece, off);
    unmet_asked "unmet-asked" (what, standing);
    unmet_found "unmet-found" (what);
    unmet_never "unmet-never" ();

    // Entries of any kind.
    as_said "as-said" (what);
    entry_kind "entry-kind" (wants, has);
    entry_no_sheet_value "entry-no-sheet-value" (key);
    sign_given "sign-given" (name);

    // Readings.
    reading_unit "reading-unit" (wants, has);
    reading_read "reading-read" (value);
    reading_inside "reading-inside" (value);
    reading_above "reading-above" (value, limit, name);
    reading_below "reading-below" (value, limit, name);
    reading_not_within "reading-not-within" (value, low, high, name);

    // Fluid level.
    level_agree "level-agree" (class, readings);
    level_no_trace_confirmed "level-no-trace-confirmed" ();
    level_too_few "level-too-few" (readings);
    level_outside_chart "level-outside-chart" (from, to);
    level_no_trace "level-no-trace" ();
    level_disagree "level-disagree" (agreement);
    level_disagree_by "level-disagree-by" (spread, agreement);
    level_disagree_dry "level-disagree-dry" ();
    level_no_agreement "level-no-agreement" ();
    level_classes_differ "level-classes-differ" ();
    level_off_by "level-off-by" (class, distance, low, high, temperature);
    level_add "level-add" (pour, pours, estimate);
    level_take_out "level-take-out" (estimate);
    level_gain_learnt "level-gain-learnt" (gain, additions);
    level_gain_sheet "level-gain-sheet" (gain);
    level_no_gain "level-no-gain" (value);
    level_closed "level-closed" (why);
    level_given_up "level-given-up" (by, reason);

    // Coils.
    coil_inside "coil-inside" (is, at, low, high, name);
    coil_below "coil-below" (is, at, low, high, name);
    coil_above "coil-above" (is, at, low, high, name);
    coil_open "coil-open" (is, at);
    coil_short "coil-short" (is, at);
    coil_unclear "coil-unclear" (least, most, at, low, high);
    coil_meter_unknown "coil-meter-unknown" ();
    coils_inside "coils-inside" (count);
    coils_none "coils-none" ();
    coils_unknown "coils-unknown" (name);
    coils_twice "coils-twice" (name);
    coils_missing "coils-missing" (name);

    // Hot parts that cool.
    cool_down_cool "cool-down-cool" (value, limit, name);
    cool_down_hot "cool-down-hot" (value, limit, name);
    cool_down_not_before "cool-down-not-before" (time, minutes);
    cool_down_too_few "cool-down-too-few" (counted, wants);
    cool_down_rises "cool-down-rises" ();
    cool_down_never "cool-down-never" ();
    cool_down_no_curve "cool-down-no-curve" ();
    cool_down_spread "cool-down-spread" ();
    cool_down_no_ambient "cool-down-no-ambient" ();
    cool_down_older "cool-down-older" (readings);
    cool_down_left_out "cool-down-left-out" (readings);
    cool_down_infrared "cool-down-infrared" (lowest, highest);
    cool_down_no_evidence "cool-down-no-evidence" ();

    // Fluid balance.
    balance_closes "balance-closes" (drained, added, uncertainty);
    balance_more_in "balance-more-in" (difference, uncertainty, drained, added);
    balance_less_in "balance-less-in" (difference, uncertainty, drained, added);
    balance_beyond_capacity "balance-beyond-capacity" ();
    balance_no_entry "balance-no-entry" (entry);
    balance_no_unseen "balance-no-unseen" (value);
    balance_no_capacity "balance-no-capacity" (value);
    balance_explain "balance-explain" ();
    balance_explained "balance-explained" (by, reason);

    // Counts.
    count_all "count-all" (items);
    count_short "count-short" (items);
    count_accounted "count-accounted" (items, reason, by);
    count_more "count-more" (item, counted, expected);
    count_item_missing "count-item-missing" (item);
    count_item_unknown "count-item-unknown" (item);

    // Torque.
    torque_inside "torque-inside" (stages);
    torque_outside "torque-outside" (stage, setting, lowest, highest);
    torque_unit_slip "torque-unit-slip" (stage, setting, lowest, highest, fits);
    torque_tool_range "torque-tool-range" (setting, tool, lowest, highest);
    torque_calibration "torque-calibration" (tool, due);
    torque_stage_count "torque-stage-count" (wants, has);
    torque_not_proved "torque-not-proved" (stage, can, from, to);
    torque_may_except "torque-may-except" ();
    torque_by_exception "torque-by-exception" (by, reason);
    torque_adapter "torque-adapter" (stage, setting, wanted);
    torque_angle_count "torque-angle-count" (wants, has);
    torque_angle_short "torque-angle-short" (bolt, turned, target, left);
    torque_angle_over "torque-angle-over" (bolt, turned, target);
    torque_angles_inside "torque-angles-inside" (bolts);
    tool_date "tool-date" (text);
    tool_no_name "tool-no-name" ();
    tool_no_number "tool-no-number" ();
    tool_no_date "tool-no-date" ();
    tool_calibrated_ahead "tool-calibrated-ahead" (day, today);
    tool_calibrated_after "tool-calibrated-after" (day, due);
    tool_past "tool-past" (due, today);
    tool_class_a "tool-class-a" (percent);

    // Photos, answers, texts, waits, notes.
    photo_taken "photo-taken" ();
    photo_hash "photo-hash" ();
    photo_size "photo-size" ();
    choice_made "choice-made" (answer);
    choice_unknown "choice-unknown" (class, known);
    several_made "several-made" (answers);
    several_none "several-none" ();
    several_one "several-one" ();

    // Decisions.
    decision_of "decision-of" (step, entry);
    decision_read "decision-read" (read, class);
    decision_missing "decision-missing" ();
    decision_none "decision-none" ();
    decision_first "decision-first" (entry);
    decision_not "decision-not" (class, says);
    decision_why "decision-why" (says);
    decision_second "decision-second" (name);
    decision_against "decision-against" (class, by, reason);
    decision_again "decision-again" (entry);
    scan_read "scan-read" (text);
    scan_no_codes "scan-no-codes" ();
    scan_empty "scan-empty" ();
    vin_length "vin-length" (length);
    vin_character "vin-character" (character, position);
    vin_check_digit "vin-check-digit" (found, expected);
    vin_year "vin-year" (found);
    vin_fits "vin-fits" ();
    code_told "code-told" (code, system, origin, part);
    code_apart "code-apart" (code, system, origin, part);
    timer_elapsed "timer-elapsed" (minutes);
    timer_running "timer-running" (left, minutes);
    timer_restarted "timer-restarted" (left, minutes);
    timer_not_begun "timer-not-begun" (minutes);
    note_written "note-written" ();
    note_empty "note-empty" ();

    // Estimates, and what the customer answers.
    estimate_comes_to "estimate-comes-to" (sum, parts, labor, hours);
    estimate_limit "estimate-limit" (limit);
    estimate_unpriced "estimate-unpriced" (lines);
    estimate_empty "estimate-empty" ();
    estimate_no_name "estimate-no-name" (place);
    estimate_zero "estimate-zero" (what);
    estimate_line "estimate-line" (what, why);
    authorization_agreed "authorization-agreed" (amount, by, means);
    authorization_within "authorization-within" (limit);
    authorization_below "authorization-below" (amount, sum);
    authorization_declined "authorization-declined" (by, means);
    authorization_pending "authorization-pending" ();
    asked_currency "asked-currency" (has, wants);
    authorization_currency "authorization-currency" (has, wants);
    authorization_no_person "authorization-no-person" ();
    authorization_no_means "authorization-no-means" ();
    authorization_time "authorization-time" (text);
    authorization_ahead "authorization-ahead" (text);

    // Numbers and units as they are typed or stand on a sheet.

    // Spec sheets.
    sheet_lacks "sheet-lacks" (what);
    sheet_range "sheet-range" (min, max);
    sheet_no_coils "sheet-no-coils" ();
    sheet_coil_no_name "sheet-coil-no-name" ();
    sheet_coil_twice "sheet-coil-twice" (name);
    sheet_coil_range "sheet-coil-range" (name, min, max);
    sheet_quantity "sheet-quantity" (entry, step, unit, found);
    sheet_entry_unit "sheet-entry-unit" (entry, step, unit, known);
    sheet_positions "sheet-positions" (positions, fasteners);

    // Spec sheets while they are typed and checked.
    sheet_no_title "sheet-no-title" ();
    sheet_no_source "sheet-no-source" ();
    sheet_no_number "sheet-no-number" ();
    sheet_no_text "sheet-no-text" ();
    sheet_no_word "sheet-no-word" (known);
    sheet_word "sheet-word" (word, known);
    sheet_fasteners "sheet-fasteners" (text);
    sheet_count "sheet-count" (text, least, most);
    sheet_twice "sheet-twice" (temperature);
    sheet_chart "sheet-chart" (points);
    sheet_chart_crossed "sheet-chart-crossed" (points);
    sheet_unchanged "sheet-unchanged" ();
    sheet_check_none "sheet-check-none" ();
    sheet_check_there "sheet-check-there" (what, name);
    sheet_check_own "sheet-check-own" (what, name);

    // Starting a job.
    start_no_repair_order "start-no-repair-order" ();
    start_value "start-value" (what, value, wants);
    start_not_allowed "start-not-allowed" ();

    // Limits beside an entry.
    limit_at_most "limit-at-most" (limit, name);
    limit_at_least "limit-at-least" (limit, name);
    limit_within "limit-within" (low, high, name);
    limit_minutes "limit-minutes" (minutes);
    limit_stage "limit-stage" (stage, target, lowest, highest);
    limit_angle "limit-angle" (target, tolerance, bolts);
    limit_coil "limit-coil" (low, high, at, name);
    limit_unseen "limit-unseen" (unseen);
    limit_chart "limit-chart" (from, to);
    limit_count "limit-count" (items);

    // What figures say.
    figure_axis "figure-axis" (unit);
    figure_level_title "figure-level-title" (labels);
    figure_level_reading "figure-level-reading" (time, step, readings, class, counts);
    figure_reading "figure-reading" (values, unit, time);
    figure_reading_after "figure-reading-after" (added, values, unit, time);
    figure_angle_open "figure-angle-open" (target);
    figure_angle_turned "figure-angle-turned" (target, turned, time);
    figure_reading_dry "figure-reading-dry" (time);
    figure_bolts_title "figure-bolts-title" (step, label);
    figure_bolts_order "figure-bolts-order" (fasteners, pattern);
    figure_bolts_noted "figure-bolts-noted" (bolts);
    figure_stage_clicked "figure-stage-clicked" (stage, target, setting, time);
    figure_stage_open "figure-stage-open" (stage, target);
    figure_torque_was "figure-torque-was" (time, settings, unit, tool);
    figure_cooling_title "figure-cooling-title" (step, label, time);
    figure_cooling_heated "figure-cooling-heated" ();
    figure_cooling_first "figure-cooling-first" ();
    figure_cooling_mark "figure-cooling-mark" (limit);
    figure_cooling_not_before "figure-cooling-not-before" (time);
    figure_cooling_readings "figure-cooling-readings" (readings, counted);
    figure_cooling_limit "figure-cooling-limit" (limit, ambient);
    figure_cooling_state "figure-cooling-state" (class, time);
    figure_cooling_between "figure-cooling-between" (earliest, likely);
    figure_coil_title "figure-coil-title" (limits);
    figure_coil_limits "figure-coil-limits" (lowest, highest, at);
    figure_coil_mark "figure-coil-mark" (label, value);
    figure_coil_reading "figure-coil-reading" (time, label, value, temperature, reference, at, class);
    figure_balance_title "figure-balance-title" (step, label);
    figure_balance_drained "figure-balance-drained" ();
    figure_balance_added "figure-balance-added" ();
    figure_balance_sums "figure-balance-sums" (drained, added);
    figure_balance_state "figure-balance-state" (class, difference, uncertainty);

    // Events that cannot be written or read.
    job_event_unwritable "job-event-unwritable" (kind);
    job_event_kind_unknown "job-event-kind-unknown" (kind);
    job_event_version_unknown "job-event-version-unknown" (kind, version, newest);
    job_event_body "job-event-body" (kind, version);

    // Where the rules and the record differ.
    differs_no_step "differs-no-step" (id);
    differs_no_vehicle_action "differs-no-vehicle-action" (id);
    differs_no_sign_off "differs-no-sign-off" (id);
    differs_no_gate "differs-no-gate" (id);
    differs_no_value "differs-no-value" (id, value);
    differs_action "differs-action" (action, what);
    differs_observed "differs-observed" (what, value);
    differs_not_given "differs-not-given" (what);
    differs_start "differs-start" ();
    differs_lost "differs-lost" ();
    differs_entered "differs-entered" (step);
}
