package polewright.image.decode;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;

/**
 * Warnings of the JPEG library during decoding. The library continues after damage, but then the following blocks, and
 * the stars in them, may be misplaced; so a warning of damage is a refusal.
 *
 * <p>Cameras also write harmless oddities: an unusual revision or colour marker, and fill bytes before a marker.
 */
final class JpegDamage implements IIOReadWarningListener {
    private static final Pattern EXTRANEOUS =
            Pattern.compile("Corrupt JPEG data: (\\d{1,9}) extraneous bytes before marker 0x([0-9a-fA-F]{2})");

    private final byte[] content;
    private final int start;
    private final int end;
    private final AtomicBoolean isDamaged = new AtomicBoolean();

    /** For the picture in a part of a file. */
    JpegDamage(byte[] content, int start, int end) {
        this.content = content;
        this.start = start;
        this.end = end;
    }

    boolean isDamaged() {
        return isDamaged.get();
    }

    @Override
    public void warningOccurred(ImageReader source, String warning) {
        boolean isOfDamage = warning.startsWith("Corrupt JPEG data") || warning.startsWith("Premature end");
        if (isOfDamage && !concernsFillBytes(warning)) {
            isDamaged.set(true);
        }
    }

    private boolean concernsFillBytes(String warning) {
        Matcher extraneous = EXTRANEOUS.matcher(warning);
        if (!extraneous.lookingAt()) {
            return false;
        }
        int bytes = Integer.parseInt(extraneous.group(1));
        byte marker = (byte) Integer.parseInt(extraneous.group(2), 16);
        for (int at = start + bytes; at + 1 < end; at++) {
            if (content[at] == (byte) 0xff && content[at + 1] == marker && isFilling(at - bytes, at)) {
                return true;
            }
        }
        return false;
    }

    private boolean isFilling(int from, int to) {
        for (int at = from; at < to; at++) {
            if (content[at] != 0 && content[at] != (byte) 0xff) {
                return false;
            }
        }
        return true;
    }
}
