package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The fix of a growing night, at a bounded cost per step.
 *
 * <p>Up to {@value #EXACT} steps, more than twice as many as a busy night by eye has, are solved together. In a longer
 * night the older steps are condensed {@value #BLOCK} at a time, each block with the help of the {@value #LIVE} steps
 * after it. The outcome depends on the steps alone; results carried over from an earlier state of the night only save
 * work.
 */
public final class GrowingFix {
    private static final int LIVE = 40;
    private static final int BLOCK = 8;
    private static final int EXACT = LIVE + BLOCK;

    private final Weather weather;
    private final Alternatives alternatives;
    private final CondensedPast beginning;
    private final List<Step> steps;
    // After each block.
    private final List<CondensedPast> pasts;
    private final FixSolver.Outcome outcome;

    /**
     * The fix of a night before its first step.
     *
     * @param weather used to find the likely cause of a contradictory sighting; the steps already hold their own models
     */
    public GrowingFix(Site site, Rig rig, Weather weather) {
        this.weather = weather;
        alternatives = new Alternatives(site, weather);
        beginning = CondensedPast.none(site, rig);
        steps = List.of();
        pasts = List.of();
        outcome = new FixSolver(beginning, weather, alternatives).solve(steps);
    }

    private GrowingFix(GrowingFix before, List<Step> steps) {
        weather = before.weather;
        alternatives = before.alternatives;
        beginning = before.beginning;
        this.steps = Collections.unmodifiableList(new ArrayList<>(steps));
        int same = common(before.steps, steps);
        int blocks = Math.max(0, steps.size() - LIVE - 1) / BLOCK;
        int kept = Math.min(Math.min(blocks, before.pasts.size()), Math.max(0, same - LIVE) / BLOCK);
        pasts = new ArrayList<>(before.pasts.subList(0, kept));
        FixSolver.Outcome latest = before.outcome;
        while (pasts.size() < blocks) {
            latest = solved(pasts.size() * BLOCK + EXACT, latest);
            pasts.add(latest.condensing(BLOCK));
        }
        outcome = solved(steps.size(), latest);
    }

    /** The fix of the same night with other steps, usually these and more. */
    public GrowingFix with(List<Step> other) {
        // Most events do not concern the axis and leave the steps unchanged.
        return other.size() == steps.size() && common(steps, other) == steps.size()
                ? this
                : new GrowingFix(this, other);
    }

    public Fix fix() {
        return outcome.fix();
    }

    /** Also empty if a screw turned out to be reversed: the calibration would be that of a different rig. */
    Optional<MountCalibration> calibration() {
        Rig described = beginning.rig();
        Rig learned = fix().rig();
        return isAsDescribed(described.azimuthScrew(), learned.azimuthScrew())
                        && isAsDescribed(described.altitudeScrew(), learned.altitudeScrew())
                ? outcome.calibration()
                : Optional.empty();
    }

    private static boolean isAsDescribed(Screw described, Screw learned) {
        return described.isSenseAssumed() || described.clockwise() == learned.clockwise();
    }

    /** The outcome after {@code count} steps, reusing the latest one where possible. */
    @SuppressWarnings("ReferenceEquality") // The past is passed on unchanged, and comparing it by value would be slow.
    private FixSolver.Outcome solved(int count, FixSolver.Outcome latest) {
        CondensedPast past = pasts.isEmpty() ? beginning : pasts.get(pasts.size() - 1);
        List<Step> live = steps.subList(pasts.size() * BLOCK, count);
        FixSolver solver = new FixSolver(past, weather, alternatives);
        if (latest.past() != past) {
            return solver.solve(live);
        }
        boolean isTheSame = latest.steps().size() == live.size() && common(latest.steps(), live) == live.size();
        return isTheSame ? latest : solver.solve(live, latest);
    }

    /** Length of the common prefix of two nights. */
    private static int common(List<Step> some, List<Step> others) {
        int different = Arrays.mismatch(some.toArray(), others.toArray());
        return different < 0 ? some.size() : different;
    }
}
