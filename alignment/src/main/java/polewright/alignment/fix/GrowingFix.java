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
 * The fix of a night that grows, at a cost that does not.
 *
 * <p>Up to {@value #EXACT} steps, more than twice as many as a busy night by eye has, all are solved together. In a longer
 * night the older ones are condensed {@value #BLOCK} at a time, each block as the {@value #LIVE} steps after it tell. The
 * outcome depends on the steps alone; what is taken over from the night as it was before only saves work.
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
     * @param weather for working out a contradictory sighting's likely cause; the steps already hold their own models
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

    /** The fix of the same night with other steps: mostly these and more. */
    public GrowingFix with(List<Step> other) {
        // Most events say nothing of the axis: then it is where it was.
        return other.size() == steps.size() && common(steps, other) == steps.size()
                ? this
                : new GrowingFix(this, other);
    }

    public Fix fix() {
        return outcome.fix();
    }

    /** Nothing either of a night in which a screw went the other way than was told: its figures are those of another rig. */
    Optional<MountCalibration> hindsight() {
        Rig told = beginning.rig();
        Rig learned = fix().rig();
        return isAsTold(told.azimuthScrew(), learned.azimuthScrew())
                        && isAsTold(told.altitudeScrew(), learned.altitudeScrew())
                ? outcome.hindsight()
                : Optional.empty();
    }

    private static boolean isAsTold(Screw told, Screw learned) {
        return told.isSenseAssumed() || told.clockwise() == learned.clockwise();
    }

    /** The outcome after so many steps; of a night that grows, often the one that was had last. */
    @SuppressWarnings(
            "ReferenceEquality") // The past goes on from one night to the next as it is; compared in full it is long.
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

    /** How many steps two nights have in common from the beginning on. */
    private static int common(List<Step> some, List<Step> others) {
        int different = Arrays.mismatch(some.toArray(), others.toArray());
        return different < 0 ? some.size() : different;
    }
}
