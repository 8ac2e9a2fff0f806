package polewright.axis.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.axis.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The fix of a night that grows, at a cost that does not.
 *
 * <p>Up to {@value #EXACT} steps, which no night at a telescope has had yet, all are solved together. In a longer night the
 * older ones are condensed {@value #BLOCK} at a time, each block as the {@value #LIVE} steps after it tell. The outcome
 * depends on the steps alone; what is kept from one call to the next only saves work.
 */
public final class GrowingFix {
    private static final int LIVE = 40;
    private static final int BLOCK = 8;
    private static final int EXACT = LIVE + BLOCK;

    private final Weather weather;
    private final Past nothing;
    // After each block, of the steps that were asked for last.
    private final List<Past> pasts = new ArrayList<>();
    private List<Step> asked = List.of();
    private Optional<FixSolver.Outcome> last = Optional.empty();

    /**
     * A fix of steps to come.
     *
     * @param weather for working out a contradictory sighting's likely cause; the steps already hold their own models
     */
    public GrowingFix(Site site, Rig rig, Weather weather) {
        this.weather = weather;
        nothing = Past.none(site, rig);
    }

    /**
     * The fix of a night.
     *
     * @param steps in the order in which they happened
     */
    public Fix of(List<Step> steps) {
        return outcome(steps).fix();
    }

    FixSolver.Outcome outcome(List<Step> steps) {
        int blocks = Math.max(0, steps.size() - LIVE - 1) / BLOCK;
        int same = common(asked, steps);
        asked = List.copyOf(steps);
        while (pasts.size() > Math.min(blocks, Math.max(0, same - LIVE) / BLOCK)) {
            pasts.remove(pasts.size() - 1);
        }
        while (pasts.size() < blocks) {
            pasts.add(solved(pasts.size() * BLOCK + BLOCK + LIVE).condensing(BLOCK));
        }
        return solved(steps.size());
    }

    /** The outcome after so many of the steps that were asked for; of a night that grows, often the one that was had last. */
    private FixSolver.Outcome solved(int count) {
        Past past = pasts.isEmpty() ? nothing : pasts.get(pasts.size() - 1);
        List<Step> live = asked.subList(pasts.size() * BLOCK, count);
        FixSolver.Outcome outcome = last.filter(had -> had.past() == past)
                .filter(had -> had.steps().size() == live.size() && common(had.steps(), live) == live.size())
                .orElseGet(() -> new FixSolver(past, weather).solve(live));
        last = Optional.of(outcome);
        return outcome;
    }

    private static int common(List<Step> some, List<Step> others) {
        int most = Math.min(some.size(), others.size());
        for (int i = 0; i < most; i++) {
            // Mostly the very same, which is sooner seen.
            if (some.get(i) != others.get(i) && !some.get(i).equals(others.get(i))) {
                return i;
            }
        }
        return most;
    }
}
