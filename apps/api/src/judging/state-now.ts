/**
 * The state that the readings of a pass still hold for. Shells are measured in their housing: once they were put in
 * another place, or taken out and back, what was read of them in place is no longer true of them.
 */
export const stateNow = `
  CASE WHEN EXISTS (SELECT FROM placement
                     WHERE placement.part_id = pass.part_id AND placement.placed_at > pass.opened_at)
       THEN array_remove(pass.state, 'shells-in')
       ELSE pass.state
   END`
