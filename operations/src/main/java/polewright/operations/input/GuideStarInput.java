package polewright.operations.input;

import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** How far a guide star is from the middle of the picture: {@code 20} arcminutes, or nothing where it usually is. */
public final class GuideStarInput implements ITypeConverter<GuideStarInput.Distance> {
    /** What stands for nothing typed; may be typed too. */
    public static final String USUAL = "usual";

    private static final double MOST_ARCMIN = 1200;

    /**
     * A guide star's distance from the middle of the picture.
     *
     * @param told empty where it usually is
     */
    public record Distance(Optional<Angle> told) {
        /** On the sky, beside the pictures of that camera. */
        public Angle with(Camera camera) {
            return told.orElseGet(() -> WorkPreset.usualGuideStar(camera));
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
