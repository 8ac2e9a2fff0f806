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
    private static final int EXACT = LIVE + BLOCK - 1;

    private final Site site;
    private final Rig rig;
    private final Weather weather;
    // After each block, for the steps that were asked for last.
    private final List<Past> pasts = new ArrayList<>();
    private List<Step> last = List.of();
    private Optional<Fix> lastFix = Optional.empty();

    /**
     * A fix of steps to come.
     *
     * @param weather for working out a contradictory sighting's likely cause; the steps already hold their own models
     */
    public GrowingFix(Site site, Rig rig, Weather weather) {
        this.site = site;
        this.rig = rig;
        this.weather = weather;
    }

    /**
     * The fix of a night.
     *
     * @param steps in the order in which they happened
     */
    public Fix of(List<Step> steps) {
        // Most events say nothing of the axis: then it is where it was.
        boolean isSame = steps.size() == last.size() && common(last, steps) == last.size();
        if (lastFix.isEmpty() || !isSame) {
            Past past = past(steps);
            lastFix = Optional.of(new FixSolver(past, weather).solve(live(steps)));
        }
        return lastFix.get();
    }

    Optional<Hindsight> hindsight(List<Step> steps) {
        return new FixSolver(past(steps), weather).hindsight(live(steps));
    }

    private List<Step> live(List<Step> steps) {
        return steps.subList(pasts.size() * BLOCK, steps.size());
    }

    private Past past(List<Step> steps) {
        int blocks = Math.max(0, steps.size() - LIVE) / BLOCK;
        int same = Math.min(blocks, Math.max(0, common(last, steps) - LIVE) / BLOCK);
        lastFix = Optional.empty();
        last = List.copyOf(steps);
        while (pasts.size() > same) {
            pasts.remove(pasts.size() - 1);
        }
        while (pasts.size() < blocks) {
            int from = pasts.size() * BLOCK;
            pasts.add(new FixSolver(latest(), weather)
                    .condensing(last.subList(from, from + BLOCK), last.subList(from, from + BLOCK + LIVE)));
        }
        return latest();
    }

    private Past latest() {
        return pasts.isEmpty() ? Past.none(site, rig) : pasts.get(pasts.size() - 1);
    }

    private static int common(List<Step> some, List<Step> others) {
        int most = Math.min(some.size(), others.size());
        for (int i = 0; i < most; i++) {
            if (some.get(i) != others.get(i) && !some.get(i).equals(others.get(i))) {
                return i;
            }
        }
        return most;
    }
}
