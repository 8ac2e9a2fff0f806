package polewright.operations.input;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** The longest acceptable trail: {@code 2.5} arcseconds, or {@code 2px}. */
public final class TrailInput implements ITypeConverter<TrailInput.Trail> {
    private static final Pattern TRAIL =
            Pattern.compile("(\\d+(?:\\.\\d*)?|\\.\\d+)\\s*(px|pixels?|\"|″|arcsec|arcseconds?)?");

    /**
     * A trail's length.
     *
     * @param inPixels otherwise it is in arcseconds
     */
    public record Trail(double length, boolean inPixels) {
        /** The length on the sky, for that camera. */
        public Angle with(Camera camera) {
            return inPixels ? camera.perPixel().times(length) : Angle.ofArcseconds(length);
        }
    }

    @Override
    public Trail convert(String typed) {
        Matcher trail = TRAIL.matcher(typed.strip().toLowerCase(Locale.ROOT));
        if (!trail.matches()) {
            throw new InputRefused(
                    "'" + typed + "' is not a trail length", "write arcseconds, such as 2.5, or pixels: 2px");
        }
        String unit = trail.group(2);
        return new Trail(NumberInput.of(trail.group(1)), unit != null && unit.startsWith("p"));
    }
}
