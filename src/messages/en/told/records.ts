/** Why a record has no limit, as its cell of sources says it. */
export const records = {
  unconfirmed: (value: string, name: string) =>
    `confirm ${value} against ${name}, which stands here from memory, in the lineup (confirmed), or give the project's own`,
  noDissipation: (insulation: string | undefined, isInService: boolean) =>
    `no limit is known here for ${insulation ?? "insulation that the lineup does not name"}, ${isInService ? "in service" : "new"}: give the maker's or project's own`,
  noWave: (waves: readonly string[]) => `the wave is none of ${waves.join(", ")}`,
  noTorque: (bolt: string, grade: string) =>
    `NETA table 100.12 has no torque for ${bolt} of ${grade}: the maker gives it.`,
};
