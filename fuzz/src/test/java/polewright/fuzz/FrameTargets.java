package polewright.fuzz;

import java.util.Arrays;
import java.util.List;
import polewright.image.Frame;
import polewright.image.decode.DecodeDeadline;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameCompleteness;
import polewright.image.decode.FrameReader;
import polewright.image.decode.Mosaic;
import polewright.sky.InputRefused;

/** A frame as a watched folder handles it: is it complete, and what does it contain? */
final class FrameTargets {
    private static final List<String> LIBRARIES = List.of("java.", "jdk.", "com.code_intelligence.");

    private FrameTargets() {}

    /** A file whose format is recognised by its bytes. */
    static void frame(byte[] content) {
        read(content, "dusk");
    }

    /** A file with the extension of a raw format. */
    static void raw(byte[] content) {
        read(content, "dusk.raw");
    }

    private static void read(byte[] content, String name) {
        byte[] asGiven = content.clone();
        FrameCompleteness.of(content, name, DecodeDeadline.NONE);
        try {
            Frame frame = FrameReader.read(content, name, DecodeOptions.DEFAULT);
            Frame levelled = FrameReader.read(content, name, DecodeOptions.DEFAULT.withMosaic(Mosaic.BAYER));
            if (frame.width() != levelled.width() || frame.height() != levelled.height()) {
                throw new Finding("the frame has another size as a mosaic");
            }
        } catch (InputRefused refused) {
            requireDeclared(refused);
            throw refused;
        }
        if (!Arrays.equals(content, asGiven)) {
            throw new Finding("the bytes were changed");
        }
    }

    /** The reader may refuse errors of its libraries, but not its own bugs, and not unlimited memory or depth. */
    static void requireDeclared(InputRefused refused) {
        Throwable cause = refused.getCause();
        if (cause instanceof Error) {
            throw new Finding("the reader ran into " + cause, cause);
        }
        if (cause instanceof RuntimeException && !(cause instanceof InputRefused) && isOurs(cause)) {
            throw new Finding("the reader's own code stumbled: " + cause, cause);
        }
        if (String.valueOf(refused.getMessage()).lines().count() != 1) {
            throw new Finding("the refusal is not one line: " + refused.getMessage());
        }
    }

    private static boolean isOurs(Throwable cause) {
        return Arrays.stream(cause.getStackTrace())
                .map(StackTraceElement::getClassName)
                .filter(name -> LIBRARIES.stream().noneMatch(name::startsWith))
                .findFirst()
                .filter(name -> name.startsWith("polewright."))
                .isPresent();
    }
}
