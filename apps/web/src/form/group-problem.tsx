import { useForm } from './form-context.js';

/** For groups, which have no control of their own to carry the message. */
export function GroupProblem({ path }: { path: string }) {
  const problem = useForm().problem(path);
  return problem ? (
    <p className="tw-field-error" role="alert">
      {problem}
    </p>
  ) : null;
}
