import { Field } from "../inputs/field.tsx";
import { text } from "../inputs/spec.ts";

const NAME = { ...text("Job", 120), required: true };
const CLIENT = text("For", 120);
const NOTE = { ...text("Note", 4000), lines: true };

export function JobHeading() {
  return (
    <div className="job-heading">
      <Field pointer="/name" spec={NAME} needed="a job needs a name" />
      <Field pointer="/client" spec={CLIENT} />
      <Field pointer="/note" spec={NOTE} />
    </div>
  );
}
