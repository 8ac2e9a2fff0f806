package polewright.alignment.fix;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import polewright.alignment.sighting.Sighting;
import polewright.mount.EvidenceThreshold;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Suggests what may be wrong with the clock or the site when an observation is impossible as entered: a star below the
 * horizon, or a dark sky while the Sun is up.
 */
public final class ClockOrSiteSuspects {
    private static final int MOST = 3;
    private static final double AS_LIKELY = EvidenceThreshold.TEN_TO_ONE;

    private ClockOrSiteSuspects() {}

    private record Suspect(Mistake mistake, double cost) {}

    /**
     * The mistakes that would make a refused sighting possible, the most likely first: at most three, none of them ten
     * times less likely than the first. Empty late in a long night.
     *
     * @param before the earlier steps of the night
     * @param refused the sighting as entered
     */
    public static List<Mistake> allowing(
            Site site, Rig rig, Weather weather, List<Step> before, long seq, Sighting refused) {
        return mostLikely(
                site,
                rig,
                before,
                other -> other.sighted(seq, refused, weather)
                        .flatMap(sighted -> other.steps(weather, before)
                                .map(steps -> Stream.concat(steps.stream(), Stream.of(sighted))
                                        .toList())));
    }

    /**
     * The mistakes that would explain a dark sky at a time when the Sun is up as entered; chosen as for
     * {@link #allowing}.
     *
     * @param steps the night so far
     * @param now a time at which it is dark
     */
    public static List<Mistake> darkening(Site site, Rig rig, Weather weather, List<Step> steps, Instant now) {
        return mostLikely(
                site, rig, steps, other -> other.isDark(now, weather) ? other.steps(weather, steps) : Optional.empty());
    }

    /** Ranks the hypotheses by the fit of the rest of the night and by their prior cost. */
    private static List<Mistake> mostLikely(
            Site site, Rig rig, List<Step> entered, Function<ClockAndSiteHypotheses, Optional<List<Step>>> possible) {
        if (entered.size() > MistakeSearch.MOST_STEPS_READ_AGAIN) {
            return List.of();
        }
        CondensedPast past = CondensedPast.none(site, rig);
        List<Suspect> suspects = new ArrayList<>();
        ClockAndSiteHypotheses.of(site)
                .forEach(other -> possible.apply(other).ifPresent(steps -> {
                    Interpretation interpretation =
                            Contradictions.weigh(other.read(past, steps).night());
                    suspects.add(new Suspect(other.mistake(), other.surcharge() + Candidate.cost(interpretation)));
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
