package polewright.operations.input;

import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * The distance of a guide star from the centre of the picture: {@code 20} arcminutes, or nothing for the usual
 * distance.
 */
public final class GuideStarInput implements ITypeConverter<GuideStarInput.Distance> {
    /** The word for the usual distance, and the default when the value is omitted. */
    public static final String USUAL = "usual";

    private static final double MOST_ARCMIN = 1200;

    /**
     * A guide star's distance from the centre of the picture.
     *
     * @param given empty for the usual distance
     */
    public record Distance(Optional<Angle> given) {
        /** The distance on the sky, for frames of that camera. */
        public Angle with(Camera camera) {
            return given.orElseGet(() -> WorkPreset.usualGuideStar(camera));
        }
    }

    @Override
    public Distance convert(String typed) {
        if (typed.strip().toLowerCase(Locale.ROOT).equals(USUAL)) {
            return new Distance(Optional.empty());
        }
        double arcminutes = new NumberInput().convert(typed);
        if (!(arcminutes >= 0 && arcminutes <= MOST_ARCMIN)) {
            throw new InputRefused(
                    "a guide star '" + typed + "' arcminutes away is outside 0 to 1200",
                    "give its distance from the centre of the picture, such as 20, or nothing for the usual");
        }
        return new Distance(Optional.of(Angle.ofArcminutes(arcminutes)));
    }
}
