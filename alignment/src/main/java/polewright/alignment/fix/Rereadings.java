package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import polewright.alignment.sighting.Misreading;
import polewright.alignment.sighting.Sighting;
import polewright.mount.Odds;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * A night read otherwise than it was told: one sighting misread, the same mistake in each, another clock or site
 * ({@link ClockAndSiteHypotheses}).
 *
 * @param mistake what it assumes
 * @param night for solving the night so
 * @param surcharge how seldom that mistake is made, in units of χ²
 */
record Rereadings(Mistake mistake, NightSmoother night, double surcharge) {
    /** Any one mistake is made about as seldom as a sighting is simply wrong. */
    static final double SELDOM = ChiSquareLimits.onceInAThousand(1);

    // Whoever makes a mistake twice mostly notices the second time: odds of ten to one.
    private static final double NOT_NOTICED = Odds.TEN_TO_ONE;

    /** What it costs to assume the mistake, in units of χ², with this account of the night so read. */
    double cost(Interpretation account) {
        return mistake instanceof Mistake.TurnNotLogged missing
                ? surcharge + account.night().costOfUnknownSize(missing.meant())
                : surcharge;
    }

    /** All that can be tried where any sighting may be at fault. */
    static Stream<Rereadings> ofTheWholeNight(Site site, Weather weather, CondensedPast past, List<Step> steps) {
        if (steps.stream().noneMatch(Step.Sighted.class::isInstance)) {
            return Stream.empty();
        }
        return Stream.concat(
                habits(site, weather, past, steps),
                ClockAndSiteHypotheses.of(site).flatMap(other -> other.read(past, weather, steps).stream()));
    }

    /** One sighting read otherwise, in each of the ways in which it may have been misread. */
    static Stream<Rereadings> ofOne(
            Site site, Weather weather, CondensedPast past, List<Step> steps, Step.Sighted told) {
        List<Misreading> all = Stream.concat(
                        told.sighting().misreadings().stream(), told.sighting().otherStars(site, weather).stream())
                .toList();
        double surcharge = SELDOM + 2 * Math.log(Math.max(1, all.size()));
        return all.stream()
                .flatMap(misreading -> reread(told.seq(), misreading.meant(), site, weather).stream()
                        .map(step -> new Rereadings(
                                new Mistake.SightingMisread(told.seq(), misreading.meant(), misreading.cause()),
                                new NightSmoother(past, replaced(steps, Map.of(told.seq(), step))),
                                surcharge)));
    }

    private static Stream<Rereadings> habits(Site site, Weather weather, CondensedPast past, List<Step> steps) {
        Map<String, List<Mistake.SightingMisread>> byCause = new LinkedHashMap<>();
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                for (Misreading misreading : sighted.sighting().misreadings()) {
                    byCause.computeIfAbsent(misreading.cause(), cause -> new ArrayList<>())
                            .add(new Mistake.SightingMisread(sighted.seq(), misreading.meant(), misreading.cause()));
                }
            }
        }
        return byCause.entrySet().stream()
                .filter(cause -> cause.getValue().size() > 1)
                .flatMap(cause -> {
                    Map<Long, Sighting> meant = new LinkedHashMap<>();
                    cause.getValue().forEach(misread -> meant.put(misread.seq(), misread.meant()));
                    return reread(steps, site, weather, s -> meant.getOrDefault(s.seq(), s.sighting()))
                            .map(otherwise -> new Rereadings(
                                    new Mistake.HabitualMistake(cause.getValue(), cause.getKey() + " every time"),
                                    new NightSmoother(past, otherwise),
                                    SELDOM + NOT_NOTICED))
                            .stream();
                });
    }

    /** Nothing if one of the sightings could not have been made then and there. */
    private static Optional<List<Step>> reread(
            List<Step> steps, Site site, Weather weather, Function<Step.Sighted, Sighting> meant) {
        List<Step> otherwise = new ArrayList<>(steps.size());
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                Optional<Step> other = reread(sighted.seq(), meant.apply(sighted), site, weather);
                if (other.isEmpty()) {
                    return Optional.empty();
                }
                otherwise.add(other.get());
            } else {
                otherwise.add(step);
            }
        }
        return Optional.of(otherwise);
    }

    /** A sighting; nothing if it could not have been made then and there. */
    static Optional<Step> reread(long seq, Sighting meant, Site site, Weather weather) {
        try {
            return Optional.of(Step.Sighted.of(seq, meant, site, weather));
        } catch (InputRefused impossible) {
            return Optional.empty();
        }
    }

    private static List<Step> replaced(List<Step> steps, Map<Long, Step> others) {
        return steps.stream()
                .<Step>map(step -> step instanceof Step.Sighted ? others.getOrDefault(step.seq(), step) : step)
                .toList();
    }
}
