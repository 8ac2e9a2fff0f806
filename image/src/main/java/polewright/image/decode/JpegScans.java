package polewright.image.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Checks the coded data of a baseline JPEG without decoding it (ITU-T T.81, annexes B and F): there must be exactly the
 * blocks that its size requires, each well formed.
 *
 * <p>The library continues after damage. If even one block is lost or invented, all that follow are misplaced, and the
 * library does not always warn.
 */
final class JpegScans {
    private static final int BASELINE = 0xc0;
    private static final int EXTENDED = 0xc1;
    private static final int TABLES = 0xc4;
    private static final int END_OF_IMAGE = 0xd9;
    private static final int START_OF_SCAN = 0xda;
    private static final int RESTART_INTERVAL = 0xdd;
    private static final int FIRST_RESTART = 0xd0;
    private static final int RESTARTS = 8;
    private static final int COEFFICIENTS = 64;
    private static final int SIDE = 8;
    /** For pictures of 8 bits (ITU-T T.81, tables F.1 and F.2). */
    private static final int MOST_DC_BITS = 11;

    private static final int MOST_AC_BITS = 10;

    private final byte[] content;
    private final int end;
    private final DecodeDeadline deadline;
    /** Four DC tables, then four AC tables. */
    private final @Nullable JpegCode[] codes = new JpegCode[8];

    private final List<Component> components = new ArrayList<>();
    private int width;
    private int height;
    private int interval;

    /** A colour component: its horizontal and vertical sampling factors. */
    private record Component(int id, int across, int down) {}

    /** A component in a scan, with its codes. */
    private record Coded(Component component, JpegCode dc, JpegCode ac) {}

    private JpegScans(byte[] content, int end, DecodeDeadline deadline) {
        this.content = content;
        this.end = end;
        this.deadline = deadline;
    }

    /**
     * Whether the data of a picture match its headers.
     *
     * @param start offset of its first byte
     * @param end offset after its last
     */
    static boolean areValid(byte[] content, int start, int end, DecodeDeadline deadline) {
        return new JpegScans(content, end, deadline).areValid(start + 2);
    }

    private boolean areValid(int first) {
        int at = first;
        boolean hasScan = false;
        while (true) {
            while (at + 1 < end && !(content[at] == (byte) 0xff && content[at + 1] != 0 && content[at + 1] != -1)) {
                at++;
            }
            if (at + 4 > end) {
                return hasScan && at + 1 < end && (content[at + 1] & 0xff) == END_OF_IMAGE;
            }
            int marker = content[at + 1] & 0xff;
            if (marker == END_OF_IMAGE) {
                return hasScan;
            }
            int next = at + 2 + u16(at + 2);
            if (next > end || next < at + 4 || !header(marker, at + 4, next)) {
                return false;
            }
            at = marker == START_OF_SCAN ? scan(at + 4, next) : next;
            if (at < 0) {
                return false;
            }
            if (marker == START_OF_SCAN) {
                hasScan = true;
            }
        }
    }

    /** Reads a segment; false if it is invalid. */
    private boolean header(int marker, int at, int next) {
        return switch (marker) {
            case BASELINE, EXTENDED -> frame(at, next);
            case TABLES -> tables(at, next);
            case RESTART_INTERVAL -> {
                interval = next - at < 2 ? 0 : u16(at);
                yield true;
            }
            default -> true;
        };
    }

    private boolean frame(int at, int next) {
        int count = next - at < 6 ? 0 : content[at + 5] & 0xff;
        if (count == 0 || next - at < 6 + 3 * count || !components.isEmpty()) {
            return false;
        }
        height = u16(at + 1);
        width = u16(at + 3);
        for (int i = 0; i < count; i++) {
            int sampling = content[at + 7 + 3 * i] & 0xff;
            components.add(new Component(content[at + 6 + 3 * i] & 0xff, sampling >> 4, sampling & 0xf));
        }
        return components.stream().allMatch(c -> c.across >= 1 && c.across <= 4 && c.down >= 1 && c.down <= 4);
    }

    private boolean tables(int first, int next) {
        int at = first;
        while (at < next) {
            int symbols = 0;
            for (int length = 1; length <= 16 && at + length < next; length++) {
                symbols += content[at + length] & 0xff;
            }
            int which = content[at] & 0xff;
            if (at + 17 + symbols > next || (which & 0xec) != 0) {
                return false;
            }
            Optional<JpegCode> code = JpegCode.of(content, at + 1);
            if (code.isEmpty()) {
                return false;
            }
            codes[(which >> 4) * 4 + (which & 3)] = code.get();
            at += 17 + symbols;
        }
        return true;
    }

    /**
     * Checks one scan.
     *
     * @param at offset of its header, after the length
     * @param next offset of its first data
     * @return offset after its data; negative if they are invalid
     */
    private int scan(int at, int next) {
        List<Coded> coded = coded(at, next);
        if (coded.isEmpty()) {
            return -1;
        }
        int across = components.stream().mapToInt(Component::across).max().orElse(1);
        int down = components.stream().mapToInt(Component::down).max().orElse(1);
        boolean isAlone = coded.size() == 1;
        Component only = coded.get(0).component;
        int columns = isAlone ? ceil(ceil(width * only.across, across), SIDE) : ceil(width, SIDE * across);
        int rows = isAlone ? ceil(ceil(height * only.down, down), SIDE) : ceil(height, SIDE * down);
        JpegBits bits = new JpegBits(content, next, end);
        long units = (long) columns * rows;
        for (long unit = 0; unit < units; unit++) {
            if (unit % columns == 0) {
                deadline.check();
            }
            boolean isAtRestart = interval > 0 && unit > 0 && unit % interval == 0;
            if (isAtRestart && bits.marker() != FIRST_RESTART + (unit / interval - 1) % RESTARTS) {
                return -1;
            }
            for (Coded colour : coded) {
                int count = isAlone ? 1 : colour.component.across * colour.component.down;
                for (int block = 0; block < count; block++) {
                    if (!block(bits, colour)) {
                        return -1;
                    }
                }
            }
        }
        return bits.marker() < 0 ? -1 : bits.position() - 2;
    }

    private List<Coded> coded(int at, int next) {
        List<Coded> coded = new ArrayList<>();
        int count = at < next ? content[at] & 0xff : 0;
        if (next - at < 1 + 2 * count) {
            return List.of();
        }
        for (int i = 0; i < count; i++) {
            int id = content[at + 1 + 2 * i] & 0xff;
            int which = content[at + 2 + 2 * i] & 0xff;
            JpegCode dc = codes[which >> 4 & 3];
            JpegCode ac = codes[4 + (which & 3)];
            Optional<Component> component =
                    components.stream().filter(c -> c.id == id).findFirst();
            if (dc == null || ac == null || component.isEmpty()) {
                return List.of();
            }
            coded.add(new Coded(component.get(), dc, ac));
        }
        return coded;
    }

    private static int ceil(int value, int part) {
        return (value + part - 1) / part;
    }

    private static boolean block(JpegBits bits, Coded colour) {
        int size = bits.symbol(colour.dc);
        if (size < 0 || size > MOST_DC_BITS || !bits.skip(size)) {
            return false;
        }
        for (int k = 1; k < COEFFICIENTS; k++) {
            int symbol = bits.symbol(colour.ac);
            int length = symbol & 0xf;
            int zeros = symbol >> 4;
            if (symbol < 0 || length > MOST_AC_BITS || !bits.skip(length)) {
                return false;
            }
            if (length == 0 && zeros == 0) {
                return true;
            }
            k += zeros;
            if (k >= COEFFICIENTS || (length == 0 && zeros < 15)) {
                return false;
            }
        }
        return true;
    }

    private int u16(int at) {
        return ((content[at] & 0xff) << 8) | (content[at + 1] & 0xff);
    }
}
