package polewright.image.decode;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import polewright.sky.InputRefused;

/**
 * The table of compressed tiles in a FITS file, checked against the file before the library uses it: the library
 * allocates a tile's bytes by the count in the table, without checking it (FITS standard 4.0, sections 7.3 and 10.1).
 *
 * @param unit the table
 * @param columns those that point into the heap
 * @param rowBytes length of a row
 * @param rows one for each tile
 * @param heap offset of the heap from the table's first byte
 */
record TileTable(FitsUnit unit, List<Pointer> columns, long rowBytes, long rows, long heap) {
    /** FITS standard 4.0, section 7.2.1. */
    private static final int MOST_COLUMNS = 999;

    private static final Pattern FORM = Pattern.compile("\\s*(\\d{0,9})([LXBIJKAEDCMPQ])([LXBIJKAEDCM]?).*");
    private static final int HCOMPRESS_HEADER_BYTES = 25;
    private static final short HCOMPRESS_MARK = (short) 0xdd99;
    private static final int HCOMPRESS_PLANES_AT = 22;
    private static final int MOST_BIT_PLANES = 63;

    /**
     * The table described by a header.
     *
     * @throws InputRefused if it is not a table, or does not have a row for each tile
     */
    static TileTable of(FitsUnit unit, TileGrid grid) {
        FitsCounts counts = unit.counts();
        counts.required("BITPIX", 8, 8);
        counts.required("NAXIS", 2, 2);
        counts.orElse("GCOUNT", 1, 1, 1);
        int fields = (int) counts.required("TFIELDS", 1, MOST_COLUMNS);
        List<Pointer> columns = new ArrayList<>();
        long at = 0;
        for (int i = 1; i <= fields; i++) {
            Matcher form = FORM.matcher(unit.header().getStringValue("TFORM" + i, ""));
            if (!form.matches()) {
                throw damaged();
            }
            long repeat = form.group(1).isEmpty() ? 1 : Long.parseLong(form.group(1));
            char type = form.group(2).charAt(0);
            if (type == 'P' || type == 'Q') {
                if (repeat > 1 || form.group(3).isEmpty()) {
                    throw damaged();
                }
                if (repeat == 1) {
                    columns.add(new Pointer(
                            name(unit, i), at, type == 'Q', bytes(form.group(3).charAt(0), 1)));
                }
            }
            at += bytes(type, repeat);
        }
        long rowBytes = unit.axes().length(1);
        long rows = unit.axes().length(2);
        if (at != rowBytes || at == 0) {
            throw damaged();
        }
        if (rows != grid.tiles()) {
            FitsShape shape = grid.shape();
            throw new InputRefused(
                    "its " + rows + " compressed tiles do not make " + shape.width() + " by " + shape.height()
                            + " pixels",
                    "take the frame again");
        }
        long table = Math.multiplyExact(rowBytes, rows);
        long heap = counts.orElse("THEAP", table, table, Long.MAX_VALUE);
        return new TileTable(unit, List.copyOf(columns), rowBytes, rows, heap);
    }

    /**
     * Throws unless every tile's bytes lie within the heap, and their sum does not exceed it. The whole HDU must be in
     * the file.
     */
    void requireWithinHeap(byte[] content, TileGrid grid) {
        ByteBuffer table = ByteBuffer.wrap(content, unit.dataStart(), (int) unit.dataBytes())
                .slice();
        boolean isTransformed =
                unit.header().getStringValue("ZCMPTYPE", "").trim().equalsIgnoreCase("HCOMPRESS_1");
        long heapBytes = unit.dataBytes() - heap;
        long left = heapBytes;
        for (long row = 0; row < rows; row++) {
            for (Pointer column : columns) {
                int at = (int) (row * rowBytes + column.at);
                long count = column.wide ? table.getLong(at) : table.getInt(at);
                long offset = column.wide ? table.getLong(at + 8) : table.getInt(at + 4);
                long room = heapBytes - offset;
                if (count < 0 || offset < 0 || room < 0 || count > Math.min(left, room) / column.elementBytes) {
                    throw damaged();
                }
                left -= count * column.elementBytes;
                if (isTransformed && count > 0 && column.isTiles()) {
                    requireTransformOf(table, (int) (heap + offset), count, grid, row);
                }
            }
        }
    }

    /** A tile of this kind repeats its own size, by which the library allocates memory. */
    private static void requireTransformOf(ByteBuffer table, int at, long count, TileGrid grid, long row) {
        if (count < HCOMPRESS_HEADER_BYTES || table.getShort(at) != HCOMPRESS_MARK) {
            throw damaged();
        }
        long first = table.getInt(at + 2);
        long second = table.getInt(at + 6);
        long width = grid.widthOf(row);
        long height = grid.heightOf(row);
        boolean isItsSize = (first == height && second == width) || (first == width && second == height);
        boolean isDeep = false;
        for (int quadrant = 0; quadrant < 3; quadrant++) {
            isDeep |= (table.get(at + HCOMPRESS_PLANES_AT + quadrant) & 0xff) > MOST_BIT_PLANES;
        }
        if (!isItsSize || isDeep) {
            throw damaged();
        }
    }

    private static String name(FitsUnit unit, int column) {
        return unit.header().getStringValue("TTYPE" + column, "").trim();
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
     * @param name of the column
     * @param at its offset in a row, bytes
     * @param wide whether count and offset have 64 bits each, not 32
     * @param elementBytes size of the elements counted
     */
    record Pointer(String name, long at, boolean wide, long elementBytes) {
        boolean isTiles() {
            return "COMPRESSED_DATA".equals(name);
        }
    }
}
