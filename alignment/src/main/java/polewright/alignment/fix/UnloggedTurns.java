package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Screws that may have been turned between one sighting and the next without being logged. */
final class UnloggedTurns {
    // One screw, the other, or both.
    private static final double CHOICES = 2 * Math.log(3);

    private UnloggedTurns() {}

    /**
     * A gap between two sightings in which turns may be missing.
     *
     * @param index of the step before which to insert them
     */
    record Gap(Step.Sighted before, Step.Sighted after, int index) {
        /** The gaps between successive sightings of a night. */
        static List<Gap> of(List<Step> steps) {
            List<Gap> gaps = new ArrayList<>();
            Step.Sighted last = null;
            int lastIndex = 0;
            for (int i = 0; i < steps.size(); i++) {
                if (steps.get(i) instanceof Step.Sighted sighted) {
                    if (last != null) {
                        gaps.add(new Gap(last, sighted, lastIndex + 1));
                    }
                    last = sighted;
                    lastIndex = i;
                }
            }
            return gaps;
        }

        /** The night with both screws turned in the gap: no other missing turns there can explain more. */
        Rereadings both(CondensedPast past, List<Step> steps) {
            return missing(past, steps, true, true, "the axis was moved");
        }

        /** The night with one screw turned in the gap, for each screw. */
        Stream<Rereadings> one(CondensedPast past, List<Step> steps) {
            return Stream.of(
                    missing(past, steps, true, false, "the azimuth screw was turned"),
                    missing(past, steps, false, true, "the altitude screw was turned"));
        }

        private Rereadings missing(
                CondensedPast past, List<Step> steps, boolean azimuth, boolean altitude, String what) {
            Step.TurnedUnlogged turned = Step.TurnedUnlogged.after(before.seq(), azimuth, altitude);
            List<Step> with = new ArrayList<>(steps);
            with.add(index, turned);
            return new Rereadings(
                    new Mistake.TurnNotLogged(
                            turned,
                            what + " between #" + before.seq() + " and #" + after.seq() + ", and that was not logged"),
                    new NightSmoother(past, with),
                    Rereadings.SELDOM + CHOICES);
        }
    }
}
