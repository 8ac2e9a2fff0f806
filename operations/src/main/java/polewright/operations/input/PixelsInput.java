package polewright.operations.input;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/** The size of a camera in pixels: {@code 4144x2822}. */
public final class PixelsInput implements ITypeConverter<PixelsInput.Pixels> {
    private static final Pattern SIZE = Pattern.compile("(\\d{1,6})\\s*[x×,]\\s*(\\d{1,6})");

    /** Columns and rows. */
    public record Pixels(int width, int height) {}

    @Override
    public Pixels convert(String typed) {
        Matcher size = SIZE.matcher(typed.strip().toLowerCase(java.util.Locale.ROOT));
        if (!size.matches()) {
            throw new InputRefused(
                    "'" + typed + "' is not a size in pixels", "write width and height, such as 4144x2822");
        }
        return new Pixels(Integer.parseInt(size.group(1)), Integer.parseInt(size.group(2)));
    }
}
