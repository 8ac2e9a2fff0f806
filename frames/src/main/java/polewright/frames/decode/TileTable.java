package polewright.frames.decode;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.sky.InputRefused;

/**
 * The table in which a FITS file keeps its compressed tiles, held against the file before the library believes it: it takes
 * memory for a tile's bytes by the count in the table, whatever that may be (FITS standard 4.0, sections 7.3 and 10.1).
 *
 * @param unit the table
 * @param columns those that point into the heap
 */
record TileTable(FitsUnit unit, List<Pointer> columns) {
    private static final Pattern FORM = Pattern.compile("\\s*(\\d*)([LXBIJKAEDCMPQ])([LXBIJKAEDCM]?).*");

    static TileTable of(FitsUnit unit) {
        List<Pointer> columns = new ArrayList<>();
        long at = 0;
        for (int i = 1; i <= unit.header().getIntValue("TFIELDS", 0); i++) {
            Matcher form = FORM.matcher(unit.header().getStringValue("TFORM" + i, ""));
            if (!form.matches()) {
                throw damaged();
            }
            long repeat = form.group(1).isEmpty() ? 1 : Long.parseLong(form.group(1));
            char type = form.group(2).charAt(0);
            if ((type == 'P' || type == 'Q') && repeat > 0 && !form.group(3).isEmpty()) {
                columns.add(new Pointer(at, type == 'Q', bytes(form.group(3).charAt(0), 1)));
            }
            at += bytes(type, repeat);
        }
        if (at != unit.axis("NAXIS", 1)) {
            throw damaged();
        }
        return new TileTable(unit, List.copyOf(columns));
    }

    /** Throws unless every pointer stays within the heap. The whole unit must be in the file. */
    void requireWithinHeap(byte[] content) {
        long rowBytes = unit.axis("NAXIS", 1);
        long rows = unit.axis("NAXIS", 2);
        long heap = unit.header().getLongValue("THEAP", rowBytes * rows);
        ByteBuffer table = ByteBuffer.wrap(content, unit.dataStart(), (int) unit.dataBytes())
                .slice();
        for (long row = 0; row < rows; row++) {
            for (Pointer column : columns) {
                int at = (int) (row * rowBytes + column.at);
                long count = column.wide ? table.getLong(at) : table.getInt(at);
                long offset = column.wide ? table.getLong(at + 8) : table.getInt(at + 4);
                long room = unit.dataBytes() - heap - offset;
                if (count < 0 || offset < 0 || heap < 0 || room < 0 || count > room / column.elementBytes) {
                    throw damaged();
                }
            }
        }
    }

    private static long bytes(char type, long repeat) {
        return switch (type) {
            case 'X' -> (repeat + 7) / 8;
            case 'I' -> 2 * repeat;
            case 'J', 'E' -> 4 * repeat;
            case 'K', 'D', 'C', 'P' -> 8 * repeat;
            case 'M', 'Q' -> 16 * repeat;
            default -> repeat;
        };
    }

    private static InputRefused damaged() {
        return new InputRefused("its table of compressed tiles is damaged", "copy it again, or take another frame");
    }

    /**
     * A column of pointers into the heap.
     *
     * @param at where it stands in a row, bytes
     * @param wide whether count and offset have 64 bits each, not 32
     * @param elementBytes size of what it counts
     */
    record Pointer(long at, boolean wide, long elementBytes) {}
}
