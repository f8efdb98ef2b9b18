// The demo's people, by the ids that its walk scripts have.
export const ODE = "4f1d2a6e-8c35-4b7a-9e02-6d0c51a7f3b1";
export const MARL = "9b60c7d4-1e2f-4a58-b3c9-27f84e15d0a2";
export const LUND = "c25e8f13-74ab-4d06-8f91-5a3be07d6c43";
/** Somebody who worked in the shop before, or another device of it. */
export const NOAK = "01a22c28-0000-7000-8000-000000000a0a";
