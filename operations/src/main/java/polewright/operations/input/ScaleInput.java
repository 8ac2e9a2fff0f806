package polewright.operations.input;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.image.match.ScaleRange;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** {@code 2.5}, {@code 2.5,10} or {@code 2.5,10%}: arcseconds per pixel, and its uncertainty in percent. */
public final class ScaleInput implements ITypeConverter<ScaleRange> {
    private static final Pattern TYPED =
            Pattern.compile("(\\d+(?:\\.\\d*)?|\\.\\d+)(?:,(\\d+(?:\\.\\d*)?|\\.\\d+) ?%?)?");
    private static final double USUAL_PERCENT = 20;

    @Override
    public ScaleRange convert(String typed) {
        Matcher parts = TYPED.matcher(typed.strip());
        if (!parts.matches()) {
            throw new InputRefused(
                    "'" + typed + "' is not a scale",
                    "write arcseconds per pixel, optionally with an uncertainty in percent: 2.5 or 2.5,10%");
        }
        double percent = parts.group(2) == null ? USUAL_PERCENT : NumberInput.of(parts.group(2));
        return ScaleRange.about(Angle.ofArcseconds(NumberInput.of(parts.group(1))), percent / 100);
    }
}
