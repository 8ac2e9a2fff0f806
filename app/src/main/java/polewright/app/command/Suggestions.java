package polewright.app.command;

import java.time.Instant;
import java.util.Optional;
import polewright.axis.advice.Advice;
import polewright.night.NightState;
import polewright.night.SuggestedStar;
import polewright.sky.atlas.NamedStars;

/** A star for the sighting that is advised. */
final class Suggestions {
    private Suggestions() {}

    static Optional<SuggestedStar> star(NightState night, Instant at) {
        if (night.advice() instanceof Advice.TakeSighting take) {
            return SuggestedStar.forSighting(
                    take.kind(),
                    night.begun().site(),
                    night.begun().weather(),
                    at,
                    NamedStars.bundled().all());
        }
        return Optional.empty();
    }
}
