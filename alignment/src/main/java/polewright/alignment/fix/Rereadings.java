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
import polewright.mount.EvidenceThreshold;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The night under the assumption of a mistake: one sighting misread, the same mistake in every sighting, or a wrong
 * clock or site ({@link ClockAndSiteHypotheses}).
 *
 * @param mistake the mistake assumed
 * @param night the smoother for the corrected night
 * @param surcharge prior cost of the mistake, in units of χ²
 */
record Rereadings(Mistake mistake, NightSmoother night, double surcharge) {
    /** Prior cost of any one mistake: as rare as a sighting that is simply wrong. */
    static final double SELDOM = ChiSquareLimits.onceInAThousand(1);

    // A mistake made twice is usually noticed the second time: odds of 10 to 1.
    private static final double NOT_NOTICED = EvidenceThreshold.TEN_TO_ONE;

    /** Prior cost of the mistake, in units of χ², given an interpretation of the corrected night. */
    double cost(Interpretation interpretation) {
        return mistake instanceof Mistake.TurnNotLogged missing
                ? surcharge + interpretation.night().costOfUnknownSize(missing.meant())
                : surcharge;
    }

    /** All mistakes that affect more than one sighting. */
    static Stream<Rereadings> ofTheWholeNight(Site site, Weather weather, CondensedPast past, List<Step> steps) {
        if (steps.stream().noneMatch(Step.Sighted.class::isInstance)) {
            return Stream.empty();
        }
        return Stream.concat(
                habits(site, weather, past, steps),
                ClockAndSiteHypotheses.of(site).flatMap(other -> other.read(past, weather, steps).stream()));
    }

    /** One sighting replaced by each of its possible misreadings. */
    static Stream<Rereadings> ofOne(
            Site site, Weather weather, CondensedPast past, List<Step> steps, Step.Sighted entered) {
        List<Misreading> all = Stream.concat(
                        entered.sighting().misreadings().stream(),
                        entered.sighting().otherStars(site, weather).stream())
                .toList();
        double surcharge = SELDOM + 2 * Math.log(Math.max(1, all.size()));
        return all.stream()
                .flatMap(misreading -> reread(entered.seq(), misreading.meant(), site, weather).stream()
                        .map(step -> new Rereadings(
                                new Mistake.SightingMisread(entered.seq(), misreading.meant(), misreading.cause()),
                                new NightSmoother(past, replaced(steps, Map.of(entered.seq(), step))),
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
                            .map(corrected -> new Rereadings(
                                    new Mistake.HabitualMistake(cause.getValue(), cause.getKey() + " every time"),
                                    new NightSmoother(past, corrected),
                                    SELDOM + NOT_NOTICED))
                            .stream();
                });
    }

    /** Empty if one of the sightings could not have been made at that time and place. */
    private static Optional<List<Step>> reread(
            List<Step> steps, Site site, Weather weather, Function<Step.Sighted, Sighting> meant) {
        List<Step> corrected = new ArrayList<>(steps.size());
        for (Step step : steps) {
            if (step instanceof Step.Sighted sighted) {
                Optional<Step> other = reread(sighted.seq(), meant.apply(sighted), site, weather);
                if (other.isEmpty()) {
                    return Optional.empty();
                }
                corrected.add(other.get());
            } else {
                corrected.add(step);
            }
        }
        return Optional.of(corrected);
    }

    /** A corrected sighting; empty if it could not have been made at that time and place. */
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
