package polewright.alignment.fix;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import polewright.alignment.sighting.Sighting;
import polewright.mount.Odds;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * What may be wrong with the clock or the site where something was seen that cannot have been seen as the night was told: a
 * star that was down, or a dark sky while the Sun was up.
 */
public final class ClockOrSiteSuspects {
    private static final int MOST = 3;
    private static final double AS_LIKELY = Odds.TEN_TO_ONE;

    private ClockOrSiteSuspects() {}

    private record Suspect(Mistake mistake, double cost) {}

    /**
     * The mistakes by which a sighting could have been made that is impossible as told, the likeliest first; none much less
     * likely than that, three at most, and none at all late in a long night.
     *
     * @param before the steps of the night before it
     * @param refused the sighting as it was entered
     */
    public static List<Mistake> allowing(
            Site site, Rig rig, Weather weather, List<Step> before, long seq, Sighting refused) {
        return likeliest(
                site,
                rig,
                before,
                other -> other.sighted(seq, refused, weather)
                        .flatMap(sighted -> other.steps(weather, before)
                                .map(steps -> Stream.concat(steps.stream(), Stream.of(sighted))
                                        .toList())));
    }

    /**
     * The mistakes by which it is dark at a time when the Sun is up as told, likewise.
     *
     * @param steps of the night so far
     * @param now when it is dark
     */
    public static List<Mistake> darkening(Site site, Rig rig, Weather weather, List<Step> steps, Instant now) {
        return likeliest(
                site, rig, steps, other -> other.isDark(now, weather) ? other.steps(weather, steps) : Optional.empty());
    }

    /** By how well the rest of the night fits with each, and how seldom it is made. */
    private static List<Mistake> likeliest(
            Site site, Rig rig, List<Step> told, Function<ClockAndSiteHypotheses, Optional<List<Step>>> possible) {
        if (told.size() > MistakeSearch.MOST_STEPS_READ_AGAIN) {
            return List.of();
        }
        CondensedPast past = CondensedPast.none(site, rig);
        List<Suspect> suspects = new ArrayList<>();
        ClockAndSiteHypotheses.of(site)
                .forEach(other -> possible.apply(other).ifPresent(steps -> {
                    Interpretation account =
                            Contradictions.weigh(other.read(past, steps).night());
                    suspects.add(new Suspect(other.mistake(), other.surcharge() + Candidate.cost(account)));
                }));
        double least = suspects.stream().mapToDouble(Suspect::cost).min().orElse(0);
        return suspects.stream()
                .filter(suspect -> suspect.cost() <= least + AS_LIKELY)
                .sorted(Comparator.comparingDouble(Suspect::cost))
                .limit(MOST)
                .map(Suspect::mistake)
                .toList();
    }
}
