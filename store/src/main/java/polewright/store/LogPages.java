package polewright.store;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The pages of a log's file, each read on its own: if SQLite's b-tree is broken, the rows on the remaining pages can
 * still be read. The layout is that of <em>Database File Format</em>, sqlite.org/fileformat2.html; the table
 * {@code event} has no rowid, so its rows are the keys of an index b-tree.
 */
final class LogPages {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int FILE_HEADER = 100;
    private static final int PAGE_SIZE_AT = 16;
    private static final int RESERVED_AT = 20;
    private static final int USUAL_PAGE = 4096;
    private static final int INNER_PAGE = 2;
    private static final int LEAF_PAGE = 10;
    private static final int COLUMNS = 5;

    private final ByteBuffer bytes;
    private final int pageSize;
    private final int usable;

    LogPages(byte[] file) {
        bytes = ByteBuffer.wrap(file);
        boolean hasHeader = file.length >= FILE_HEADER
                && ByteBuffer.wrap(file, 0, MAGIC.length).equals(ByteBuffer.wrap(MAGIC));
        int stored = hasHeader ? bytes.getShort(PAGE_SIZE_AT) & 0xffff : 0;
        int size = stored == 1 ? 65536 : stored;
        boolean isUsable = Integer.bitCount(size) == 1 && size >= 512;
        pageSize = isUsable ? size : USUAL_PAGE;
        usable = pageSize - (isUsable ? bytes.get(RESERVED_AT) & 0xff : 0);
    }

    /**
     * A row of the event table, as far as its structure shows.
     *
     * @param night the number of its night
     * @param seq its number in it
     * @param line the event
     */
    record Row(long night, long seq, String line) {}

    /** Everything that looks like a row of that table, in no particular order. */
    List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (int page = 0; (long) (page + 1) * pageSize <= bytes.capacity(); page++) {
            int start = page * pageSize;
            int head = start + (page == 0 ? FILE_HEADER : 0);
            int kind = bytes.get(head);
            if (kind == LEAF_PAGE || kind == INNER_PAGE) {
                addRows(rows, start, head, kind == INNER_PAGE);
            }
        }
        return rows;
    }

    private void addRows(List<Row> rows, int start, int head, boolean isInner) {
        int cells = bytes.getShort(head + 3) & 0xffff;
        int pointers = head + (isInner ? 12 : 8);
        for (int i = 0; i < cells && pointers + 2 * i + 2 <= start + pageSize; i++) {
            int cell = bytes.getShort(pointers + 2 * i) & 0xffff;
            row(start + cell + (isInner ? 4 : 0), start + pageSize).ifPresent(rows::add);
        }
    }

    /** Empty if it is not a row, or points outside its page or the file: the next one may be valid. */
    private Optional<Row> row(int at, int end) {
        try {
            return readRow(at, end);
        } catch (IndexOutOfBoundsException | BufferUnderflowException | ArithmeticException damaged) {
            return Optional.empty();
        }
    }

    private Optional<Row> readRow(int at, int end) {
        Numbers numbers = new Numbers(bytes, at);
        long length = numbers.next();
        // Allocates no more memory than the file has bytes.
        if (length <= 0 || length > bytes.capacity() || at >= end) {
            return Optional.empty();
        }
        return content(numbers.at(), end, (int) length).flatMap(LogPages::parsed);
    }

    /** The content of a cell, including its overflow pages; empty if they cannot be found. */
    private Optional<byte[]> content(int at, int end, int length) {
        int most = (usable - 12) * 64 / 255 - 23;
        int least = (usable - 12) * 32 / 255 - 23;
        int fitting = least + (length - least) % (usable - 4);
        int here = length <= most ? length : fitting <= most ? fitting : least;
        if (at + here > end) {
            return Optional.empty();
        }
        byte[] content = new byte[length];
        bytes.get(at, content, 0, here);
        Set<Integer> seen = new HashSet<>();
        int next = here < length ? bytes.getInt(at + here) : 0;
        for (int have = here; have < length; ) {
            if (next < 2 || !seen.add(next)) {
                return Optional.empty();
            }
            int page = Math.multiplyExact(next - 1, pageSize);
            int some = Math.min(length - have, usable - 4);
            bytes.get(page + 4, content, have, some);
            have += some;
            next = bytes.getInt(page);
        }
        return Optional.of(content);
    }

    /** A record: the sizes of its columns, then the columns. */
    private static Optional<Row> parsed(byte[] content) {
        Numbers sizes = new Numbers(ByteBuffer.wrap(content), 0);
        long headLength = sizes.next();
        List<Long> kinds = new ArrayList<>();
        while (sizes.at() < headLength && kinds.size() <= COLUMNS) {
            kinds.add(sizes.next());
        }
        if (kinds.size() != COLUMNS
                || sizes.at() != headLength
                || !kinds.stream().skip(2).allMatch(LogPages::isText)) {
            return Optional.empty();
        }
        ByteBuffer columns = ByteBuffer.wrap(content).position((int) headLength);
        long night = whole(columns, kinds.get(0));
        long seq = whole(columns, kinds.get(1));
        text(columns, kinds.get(2));
        text(columns, kinds.get(3));
        return Optional.of(new Row(night, seq, text(columns, kinds.get(4))));
    }

    private static boolean isText(long kind) {
        return kind >= 13 && kind % 2 == 1;
    }

    private static String text(ByteBuffer columns, long kind) {
        long length = (kind - 13) / 2;
        if (length > columns.remaining()) {
            throw new IndexOutOfBoundsException();
        }
        byte[] text = new byte[(int) length];
        columns.get(text);
        return new String(text, StandardCharsets.UTF_8);
    }

    private static long whole(ByteBuffer columns, long kind) {
        // 1 to 6: that many bytes; 8 and 9: the constants 0 and 1.
        int length = kind >= 1 && kind <= 4 ? (int) kind : kind == 5 ? 6 : kind == 6 ? 8 : 0;
        if (length > columns.remaining()) {
            throw new IndexOutOfBoundsException();
        }
        long value = length == 0 ? (kind == 9 ? 1 : 0) : columns.get();
        for (int i = 1; i < length; i++) {
            value = (value << 8) | (columns.get() & 0xff);
        }
        return value;
    }

    /** Variable-length integers of one to nine bytes, seven bits per byte. */
    private static final class Numbers {
        private final ByteBuffer bytes;
        private int at;

        Numbers(ByteBuffer bytes, int at) {
            this.bytes = bytes;
            this.at = at;
        }

        int at() {
            return at;
        }

        long next() {
            long value = 0;
            for (int i = 0; i < 8; i++) {
                int part = bytes.get(at++);
                value = (value << 7) | (part & 0x7f);
                if (part >= 0) {
                    return value;
                }
            }
            return (value << 8) | (bytes.get(at++) & 0xff);
        }
    }
}
