package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import polewright.alignment.sighting.AxisModel;
import polewright.alignment.sighting.Misreading;
import polewright.alignment.sighting.Sighting;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The alternative readings of each sighting of a night: what may have been seen instead of what was entered. Cached,
 * because a sighting that is set aside is looked at again after every later event.
 */
final class Alternatives {
    private final Site site;
    private final Weather weather;
    private final Map<Long, Known> misreadings = new HashMap<>();
    private final Map<Long, Known> otherStars = new HashMap<>();

    Alternatives(Site site, Weather weather) {
        this.site = site;
        this.weather = weather;
    }

    /**
     * One alternative reading.
     *
     * @param cause completes "it would fit if …"
     * @param rank 1 for the most common mistake
     */
    record Meant(String cause, AxisModel model, int rank) {}

    private record Known(Sighting sighting, List<Meant> meant) {}

    /** Readings after undoing each of the usual mistakes. */
    List<Meant> misreadings(Step.Sighted sighted) {
        return known(misreadings, sighted, Sighting::misreadings);
    }

    /** Readings of other stars. */
    List<Meant> otherStars(Step.Sighted sighted) {
        return known(otherStars, sighted, sighting -> sighting.otherStars(site, weather));
    }

    private List<Meant> known(
            Map<Long, Known> before, Step.Sighted sighted, Function<Sighting, List<Misreading>> mistakes) {
        Sighting sighting = sighted.sighting();
        Known known = before.get(sighted.seq());
        // A corrected sighting keeps its event number.
        if (known == null || !known.sighting().equals(sighting)) {
            known = new Known(sighting, possible(mistakes.apply(sighting)));
            before.put(sighted.seq(), known);
        }
        return known.meant();
    }

    private List<Meant> possible(List<Misreading> misreadings) {
        List<Meant> possible = new ArrayList<>();
        for (int i = 0; i < misreadings.size(); i++) {
            Misreading misreading = misreadings.get(i);
            try {
                possible.add(new Meant(misreading.cause(), misreading.meant().model(site, weather), i + 1));
            } catch (InputRefused impossible) {
                // Not possible: the body would have been below the horizon.
            }
        }
        return possible;
    }
}
