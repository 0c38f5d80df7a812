/** Goes up with every change of a rule, a published value or the algebra. Stored verdicts carry it. */
export const rulesVersion = '2026.11.28.9';
