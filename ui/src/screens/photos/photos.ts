// The photos of a record in the order of the job's steps.
import type { JobView, PhotoLine } from "../../core/types";

/** The photos of one step. */
export interface StepPhotos {
  /** Its number in the checklist; nothing for a step that the checklist no longer has. */
  number: number | null;
  title: string;
  photos: PhotoLine[];
}

/** Photos by step, steps in the order of the checklist, photos as they were taken. */
export function byStep(view: Pick<JobView, "steps">, photos: PhotoLine[]): StepPhotos[] {
  const of = (id: string) => photos.filter((photo) => photo.step === id);
  const known = view.steps.map((step) => ({ number: step.number, title: step.title, photos: of(step.id) }));
  const others = photos.filter((photo) => !view.steps.some((step) => step.id === photo.step));
  const rest = [...new Set(others.map((photo) => photo.step))].map((id) => ({
    number: null,
    title: of(id)[0]?.step_title ?? id,
    photos: of(id),
  }));
  return [...known, ...rest].filter((step) => step.photos.length > 0);
}

/** How far a picture of `size` may be dragged from the middle of a place of `room`, either way. */
export function reach(size: number, room: number): number {
  return Math.max(0, (size - room) / 2);
}

/** `at`, held within `limit` either way. */
export function held(at: number, limit: number): number {
  return Math.min(limit, Math.max(-limit, at));
}
