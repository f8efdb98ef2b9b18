//! How a figure came about: the lines and sentences of its working, and its sources.

panside_messages::messages! {
    // Headings, and what several figures say.
    working_given "working-given" ();
    working_steps "working-steps" ();
    working_result "working-result" ();
    working_source "working-source" ();
    working_name "working-name" (name);
    working_read "working-read" ();
    working_after "working-after" (minutes);
    working_range "working-range" (low, high);
    working_at "working-at" (value, at);
    working_at_temperature "working-at-temperature" (temperature);
    working_surroundings "working-surroundings" ();
    working_meter_shows "working-meter-shows" ();
    working_drained "working-drained" ();
    working_estimate "working-estimate" ();
    working_rise "working-rise" ();
    working_factor "working-factor" ();
    working_limits "working-limits" ();
    working_torque "working-torque" ();
    working_target "working-target" ();
    working_setting "working-setting" ();
    working_tool "working-tool" ();
    working_calibrated_until "working-calibrated-until" ();
    working_day "working-day" ();
    working_touch_limit "working-touch-limit" ();

    // Fluid balance.
    working_balance "working-balance" ();
    working_added "working-added" ();
    working_density "working-density" ();
    working_unseen "working-unseen" ();
    working_drained_at_15 "working-drained-at-15" ();
    working_added_at_15 "working-added-at-15" ();
    working_difference "working-difference" ();
    working_difference_how "working-difference-how" ();
    working_uncertainty "working-uncertainty" ();
    working_uncertainty_how "working-uncertainty-how" (volumes, temperatures, density, unseen);
    working_balanced "working-balanced" (difference);
    working_more_in "working-more-in" (difference);
    working_less_in "working-less-in" (difference);
    working_beyond_capacity "working-beyond-capacity" ();

    // Torque against its bolt.
    working_bolt "working-bolt" ();
    working_bolt_given "working-bolt-given" ();
    working_bolt_area "working-bolt-area" ();
    working_bolt_proof_load "working-bolt-proof-load" ();
    working_bolt_usual "working-bolt-usual" ();
    working_bolt_friction "working-bolt-friction" ();
    working_bolt_plausible "working-bolt-plausible" (percent);
    working_bolt_high "working-bolt-high" (percent);
    working_bolt_impossible "working-bolt-impossible" (percent);

    // Estimate.
    working_repair_estimate "working-repair-estimate" ();
    working_estimate_unpriced "working-estimate-unpriced" ();
    working_estimate_sum "working-estimate-sum" ();
    working_estimate_limit "working-estimate-limit" ();
    working_estimate_comes_to "working-estimate-comes-to" (parts, labor, hours, sum, limit);

    // Trouble codes.
    working_codes "working-codes" ();
    working_code_bytes "working-code-bytes" (bytes);
    working_code "working-code" (system, origin, part);
    working_codes_none "working-codes-none" ();
    working_codes_found "working-codes-found" (count, codes);

    // Coil resistance.
    working_coil "working-coil" ();
    working_coil_overload "working-coil-overload" ();
    working_coil_leads "working-coil-leads" ();
    working_coil_meter_error "working-coil-meter-error" ();
    working_coil_temperature "working-coil-temperature" ();
    working_coil_alone "working-coil-alone" ();
    working_coil_worst "working-coil-worst" ();
    working_coil_worst_how "working-coil-worst-how" ();
    working_coil_in "working-coil-in" ();
    working_coil_low "working-coil-low" ();
    working_coil_high "working-coil-high" ();
    working_coil_unclear "working-coil-unclear" ();
    working_coil_open "working-coil-open" ();
    working_coil_short "working-coil-short" ();

    // Cool-down.
    working_cooling "working-cooling" ();
    working_cooling_place "working-cooling-place" ();
    working_cooling_joint "working-cooling-joint" ();
    working_cooling_shell "working-cooling-shell" ();
    working_cooling_left_out "working-cooling-left-out" (temperature);
    working_cooling_probe "working-cooling-probe" ();
    working_cooling_rate "working-cooling-rate" ();
    working_cooling_left_over "working-cooling-left-over" ();
    working_cooling_curve "working-cooling-curve" (readings);
    working_cooling_earliest "working-cooling-earliest" ();
    working_cooling_likely "working-cooling-likely" ();
    working_cooling_not_before "working-cooling-not-before" ();
    working_cooling_time_how "working-cooling-time-how" ();
    working_cooling_below "working-cooling-below" ();
    working_cooling_cools "working-cooling-cools" ();
    working_cooling_too_few "working-cooling-too-few" ();
    working_cooling_rises "working-cooling-rises" ();
    working_cooling_never "working-cooling-never" ();
    working_cooling_no_curve "working-cooling-no-curve" ();
    working_cooling_wait "working-cooling-wait" (minutes);
    working_cooling_spread "working-cooling-spread" ();

    // Whether the symptom may be judged.
    working_diagnosis "working-diagnosis" ();
    working_diagnosis_level "working-diagnosis-level" (class);
    working_diagnosis_shows "working-diagnosis-shows" ();
    working_diagnosis_gone "working-diagnosis-gone" ();
    working_diagnosis_not_read "working-diagnosis-not-read" ();
    working_diagnosis_below "working-diagnosis-below" ();
    working_diagnosis_above "working-diagnosis-above" ();
    working_diagnosis_unclear "working-diagnosis-unclear" ();
    working_diagnosis_not_tried "working-diagnosis-not-tried" ();
    working_diagnosis_was_level "working-diagnosis-was-level" ();
    working_diagnosis_open "working-diagnosis-open" ();

    // Rise of the level for each litre.
    working_gain "working-gain" ();
    working_gain_addition "working-gain-addition" (number);
    working_gain_rose "working-gain-rose" (volume, before, after);
    working_gain_how "working-gain-how" ();
    working_gain_interval "working-gain-interval" ();
    working_gain_learnt "working-gain-learnt" (gain);

    // Labour.
    working_labour "working-labour" ();
    working_labour_on "working-labour-on" (phase);
    working_labour_on_waiting "working-labour-on-waiting" (phase, reason);
    working_labour_on_unplanned "working-labour-on-unplanned" (phase, reason);
    working_labour_off "working-labour-off" ();
    working_labour_work "working-labour-work" ();
    working_labour_waiting "working-labour-waiting" (reason);
    working_labour_unplanned "working-labour-unplanned" (reason);
    working_labour_work_how "working-labour-work-how" ();
    working_labour_tenths "working-labour-tenths" ();
    working_labour_tenths_how "working-labour-tenths-how" (minutes);
    working_labour_sum "working-labour-sum" (hours, waiting);
    working_labour_expected "working-labour-expected" (expected, minutes, than);

    // Fluid level.
    working_level "working-level" ();
    working_level_reading "working-level-reading" (number);
    working_level_dry "working-level-dry" ();
    working_level_dry_confirmed "working-level-dry-confirmed" ();
    working_level_before_start "working-level-before-start" (read);
    working_level_before_change "working-level-before-change" (read);
    working_level_chart_at "working-level-chart-at" (temperature);
    working_level_agreement "working-level-agreement" ();
    working_level_agreement_open "working-level-agreement-open" ();
    working_level_band_at "working-level-band-at" (temperature);
    working_level_low_at "working-level-low-at" (temperature);
    working_level_high_at "working-level-high-at" (temperature);
    working_level_chart "working-level-chart" ();
    working_level_outside "working-level-outside" ();
    working_level_above_low "working-level-above-low" (number);
    working_level_nearest "working-level-nearest" ();
    working_level_from_mark "working-level-from-mark" (class, distance, mark);
    working_level_spread "working-level-spread" ();
    working_level_spread_how "working-level-spread-how" ();
    working_level_below "working-level-below" ();
    working_level_in "working-level-in" ();
    working_level_above "working-level-above" ();
    working_level_unclear "working-level-unclear" ();
    working_level_is "working-level-is" (class, reason);
    working_level_agree "working-level-agree" ();
    working_level_no_trace_confirmed "working-level-no-trace-confirmed" ();
    working_level_too_few "working-level-too-few" ();
    working_level_outside_chart "working-level-outside-chart" ();
    working_level_no_trace "working-level-no-trace" ();
    working_level_disagree "working-level-disagree" ();
    working_level_classes_differ "working-level-classes-differ" ();
    working_level_floor "working-level-floor" ();
    working_level_idle "working-level-idle" ();
    working_level_park "working-level-park" ();
    working_level_ranges "working-level-ranges" ();

    // Bolt order.
    working_order "working-order" ();
    working_order_pattern "working-order-pattern" ();
    working_order_star "working-order-star" ();
    working_order_crosswise "working-order-crosswise" ();
    working_order_spiral "working-order-spiral" ();
    working_order_bolt "working-order-bolt" (id);
    working_order_is "working-order-is" (bolts);
    working_order_stages "working-order-stages" ();
    working_order_next "working-order-next" (id);
    working_order_done "working-order-done" ();

    // Surface by infrared.
    working_surface "working-surface" ();
    working_surface_set_to "working-surface-set-to" ();
    working_surface_emissivity "working-surface-emissivity" ();
    working_surface_lowest "working-surface-lowest" ();
    working_surface_highest "working-surface-highest" ();
    working_surface_is "working-surface-is" (likely, lowest, highest);
    working_surface_no_evidence "working-surface-no-evidence" ();

    // Top-up and first refill.
    working_top_up "working-top-up" ();
    working_top_up_share "working-top-up-share" ();
    working_top_up_most "working-top-up-most" ();
    working_top_up_rise "working-top-up-rise" ();
    working_top_up_rise_how "working-top-up-rise-how" ();
    working_top_up_at_least "working-top-up-at-least" (estimate);
    working_top_up_pours "working-top-up-pours" ();
    working_top_up_pours_how "working-top-up-pours-how" (estimate, percent, count);
    working_top_up_each "working-top-up-each" (pour);
    working_top_up_add "working-top-up-add" (total, count, estimate);
    working_top_up_take_out "working-top-up-take-out" (estimate);
    working_top_up_leave "working-top-up-leave" ();
    working_refill "working-refill" ();
    working_refill_new "working-refill-new" ();
    working_refill_hold_back "working-refill-hold-back" ();
    working_refill_intake "working-refill-intake" ();
    working_refill_level "working-refill-level" (class, gain);
    working_refill_not_known "working-refill-not-known" ();
    working_refill_as_new "working-refill-as-new" ();
    working_refill_as_new_how "working-refill-as-new-how" (drained, temperature);
    working_refill_missing "working-refill-missing" ();
    working_refill_missing_how "working-refill-missing-how" ();
    working_refill_pour "working-refill-pour" ();
    working_refill_first "working-refill-first" (pour);

    // Torque.
    working_torque_newton_metres "working-torque-newton-metres" ();
    working_torque_off_target "working-torque-off-target" ();
    working_torque_off_target_how "working-torque-off-target-how" ();
    working_torque_proved "working-torque-proved" ();
    working_torque_proved_how "working-torque-proved-how" (percent);
    working_torque_outside "working-torque-outside" ();
    working_torque_tool_range "working-torque-tool-range" ();
    working_torque_calibration "working-torque-calibration" ();
    working_torque_unit_slip "working-torque-unit-slip" (value, unit);
    working_torque_inside "working-torque-inside" ();
    working_torque_tool_coarse "working-torque-tool-coarse" ();
    working_torque_not_proved "working-torque-not-proved" ();
    working_tool_use "working-tool-use" ();
    working_tool_may "working-tool-may" ();
    working_adapter "working-adapter" ();
    working_adapter_wanted "working-adapter-wanted" ();
    working_adapter_given "working-adapter-given" ();
    working_adapter_set "working-adapter-set" (setting, newton_metres, wanted);
    working_angle "working-angle" ();
    working_angle_turned "working-angle-turned" ();
    working_angle_left "working-angle-left" ();
    working_angle_inside "working-angle-inside" ();
    working_angle_short "working-angle-short" (left);
    working_angle_over "working-angle-over" ();

    // Touch limit.
    working_touch_contact "working-touch-contact" ();
    working_touch_gloves "working-touch-gloves" ();
    working_touch_bare "working-touch-bare" ();
    working_touch_level "working-touch-level" (level);
    working_touch_level_short "working-touch-level-short" (level);
    working_touch_surface "working-touch-surface" ();
    working_touch_metal "working-touch-metal" ();
    working_touch_at_most "working-touch-at-most" (limit, contact);

    // Vehicle identification number.
    working_vin "working-vin" ();
    working_vin_sum "working-vin-sum" ();
    working_vin_check_digit "working-vin-check-digit" ();
    working_vin_year "working-vin-year" ();
    working_vin_year_how "working-vin-year-how" (code);
    working_vin_years "working-vin-years" (year, first, second);
    working_vin_fits "working-vin-fits" (vin);
    working_vin_length "working-vin-length" (found);
    working_vin_character "working-vin-character" (position, found);
    working_vin_check "working-vin-check" (found, expected);
    working_vin_no_year "working-vin-no-year" (found);
    working_vin_perhaps "working-vin-perhaps" (vin, changes);
    working_vin_change "working-vin-change" (meant, found, position);
    working_vin_changes "working-vin-changes" (start, next);
    working_vin_changes_last "working-vin-changes-last" (start, last);

    // Where rules and constants come from: the names of what was published stay as they are.
    source_seen "source-seen" (says, seen);
    source_chart "source-chart" ();
    source_level_conditions "source-level-conditions" ();
    source_read_twice "source-read-twice" ();
    source_level_first "source-level-first" ();
    source_add_less "source-add-less" ();
    source_drained_first "source-drained-first" ();
    source_least_squares "source-least-squares" ();
    source_expansion "source-expansion" ();
    source_uncertainty "source-uncertainty" ();
    source_copper "source-copper" ();
    source_meter_error "source-meter-error" ();
    source_code_form "source-code-form" ();
    source_code_groups "source-code-groups" ();
    source_vin_rule "source-vin-rule" ();
    source_vin_years "source-vin-years" ();
    source_vin_lookalikes "source-vin-lookalikes" ();
    source_tool_rules "source-tool-rules" ();
    source_calibrated_yearly "source-calibrated-yearly" ();
    source_guard_band "source-guard-band" ();
    source_adapter "source-adapter" ();
    source_angle_marked "source-angle-marked" ();
    source_proof_loads "source-proof-loads" ();
    source_nut_factor "source-nut-factor" ();
    source_coarse_pitch "source-coarse-pitch" ();
    source_star "source-star" ();
    source_from_the_middle "source-from-the-middle" ();
    source_newton "source-newton" ();
    source_reheats "source-reheats" ();
    source_touch "source-touch" ();
    source_gloves "source-gloves" ();
    source_planck "source-planck" ();
    source_radiometry "source-radiometry" ();
    source_emissivities "source-emissivities" ();
    source_tenths "source-tenths" ();
    source_line_rounding "source-line-rounding" ();
}
