package polewright.axis.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.axis.sighting.Misreading;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Why a sighting that is set aside does not fit. Low in the east or west, a drift read the wrong way and one of a star on the
 * other side of the meridian say the same: then both are named.
 */
final class LikelyCause {
    private static final double EXPLAINS_AWAY = 0.25;
    private static final double A_STAR_THAT_FITS = 3 * Contradictions.HUNDRED_TO_ONE;
    // Odds of ten to one.
    private static final double AS_LIKELY = 2 * Math.log(10);

    private LikelyCause() {}

    private record Fitting(String cause, double cost) {}

    /**
     * Completes "it would fit if …"; empty when no usual mistake explains it.
     *
     * @param account the night without it
     */
    static Optional<String> of(Account account, Step.Sighted sighted, Site site, Weather weather) {
        AxisState state = account.stateFor(sighted);
        double asRead = account.innovation(sighted);
        List<Fitting> fitting = new ArrayList<>();
        likeliest(sighted.sighting().misreadings(), asRead, sighted, state, site, weather)
                .ifPresent(fitting::add);
        // Of many stars one fits by chance.
        if (asRead > A_STAR_THAT_FITS) {
            likeliest(sighted.sighting().otherStars(site, weather), asRead, sighted, state, site, weather)
                    .ifPresent(fitting::add);
        }
        double least = fitting.stream().mapToDouble(Fitting::cost).min().orElse(0);
        String causes = fitting.stream()
                .filter(f -> f.cost() <= least + AS_LIKELY)
                .sorted(Comparator.comparingDouble(Fitting::cost))
                .map(Fitting::cause)
                .collect(Collectors.joining(", or "));
        return Optional.of(causes).filter(text -> !text.isEmpty());
    }

    /** Of several that come in order, the n-th is made n times as seldom as the first. */
    private static Optional<Fitting> likeliest(
            List<Misreading> misreadings,
            double asRead,
            Step.Sighted sighted,
            AxisState state,
            Site site,
            Weather weather) {
        List<Fitting> all = new ArrayList<>();
        for (int i = 0; i < misreadings.size(); i++) {
            Misreading misreading = misreadings.get(i);
            double asMeant;
            try {
                asMeant = LinearisedSighting.of(misreading.meant().model(site, weather), state)
                        .squaredInnovation(state);
            } catch (InputRefused impossible) {
                // This mistake cannot have been made: the body would not have been up.
                continue;
            }
            if (asMeant < Chance.onceInTwenty(sighted.model().size()) && asMeant < EXPLAINS_AWAY * asRead) {
                all.add(new Fitting(misreading.cause(), asMeant + 2 * Math.log(i + 1)));
            }
        }
        return all.stream().min(Comparator.comparingDouble(Fitting::cost));
    }
}
