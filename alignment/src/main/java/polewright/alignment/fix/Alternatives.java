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
 * What each sighting of a night may have been instead of what was written. Worked out once: a sighting that is set aside is
 * asked about at every event after it.
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
     * One of them.
     *
     * @param cause completes "it would fit if …"
     * @param rank 1 for the mistake that is made most often
     */
    record Meant(String cause, AxisModel model, int rank) {}

    private record Known(Sighting sighting, List<Meant> meant) {}

    /** By the usual slips. */
    List<Meant> misreadings(Step.Sighted sighted) {
        return known(misreadings, sighted, Sighting::misreadings);
    }

    /** Of another star. */
    List<Meant> otherStars(Step.Sighted sighted) {
        return known(otherStars, sighted, sighting -> sighting.otherStars(site, weather));
    }

    private List<Meant> known(
            Map<Long, Known> before, Step.Sighted sighted, Function<Sighting, List<Misreading>> mistakes) {
        Sighting sighting = sighted.sighting();
        Known known = before.get(sighted.seq());
        // One that was corrected keeps its number.
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
                // This mistake cannot have been made: the body would not have been up.
            }
        }
        return possible;
    }
}
