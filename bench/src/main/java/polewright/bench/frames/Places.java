package polewright.bench.frames;

import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.simulation.camera.SkyTruth;

/** Whether a frame was placed, and how well. */
sealed interface Places {
    /** Largest centre error of a correct match. */
    double RIGHT_WITHIN_PIXELS = 3;

    String inWords();

    /** Placed correctly. */
    record Right(double offPixels, double logOdds) implements Places {
        @Override
        public String inWords() {
            return String.format(Locale.ROOT, "right by %.2f px, log odds %.0f", offPixels, logOdds);
        }
    }

    /** Placed somewhere else, by this many pixels. */
    record Wrong(double offPixels, double logOdds) implements Places {
        @Override
        public String inWords() {
            return String.format(Locale.ROOT, "WRONG by %.1f px, log odds %.0f", offPixels, logOdds);
        }
    }

    /** Not placed. */
    record Nowhere() implements Places {
        @Override
        public String inWords() {
            return "not placed";
        }
    }

    static Places of(MatchOutcome outcome, SkyTruth truth) {
        if (!(outcome instanceof MatchedFrame matched)) {
            return new Nowhere();
        }
        Vector3D centre = Directions.of(truth.centre());
        double off = Vector3D.angle(matched.plate().centre(), centre)
                / truth.scalePerPixel().radians();
        return off <= RIGHT_WITHIN_PIXELS ? new Right(off, matched.logOdds()) : new Wrong(off, matched.logOdds());
    }
}
