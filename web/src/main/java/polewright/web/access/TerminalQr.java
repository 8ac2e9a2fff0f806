package polewright.web.access;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.ArrayList;
import java.util.List;

/** A QR code (ISO/IEC 18004) in half-block characters, each two modules high, with its quiet zone. */
public final class TerminalQr {
    private static final int QUIET_MODULES = 4;

    private TerminalQr() {}

    /**
     * The lines to print.
     *
     * @param isDarkTerminal whether the terminal's background is dark, in which case the light modules are printed
     */
    public static List<String> lines(String text, boolean isDarkTerminal) {
        ByteMatrix modules;
        try {
            modules = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + text.length() + " characters", e);
        }
        List<String> lines = new ArrayList<>();
        int end = modules.getWidth() + QUIET_MODULES;
        for (int y = -QUIET_MODULES; y < end; y += 2) {
            StringBuilder line = new StringBuilder();
            for (int x = -QUIET_MODULES; x < end; x++) {
                boolean upper = isDark(modules, x, y) != isDarkTerminal;
                boolean lower = isDark(modules, x, y + 1) != isDarkTerminal;
                line.append(upper ? (lower ? '█' : '▀') : lower ? '▄' : ' ');
            }
            lines.add(line.toString());
        }
        return lines;
    }

    private static boolean isDark(ByteMatrix modules, int x, int y) {
        return x >= 0 && y >= 0 && x < modules.getWidth() && y < modules.getHeight() && modules.get(x, y) == 1;
    }
}
