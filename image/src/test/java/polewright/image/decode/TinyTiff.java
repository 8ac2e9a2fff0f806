package polewright.image.decode;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;

/** Small files built by hand from TIFF directories (TIFF 6.0, section 2), as substitutes for cameras' raw files. */
final class TinyTiff {
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int ASCII = 2;
    private static final int RATIONAL = 5;
    private static final int HEADER = 8;

    private final ByteArrayOutputStream body = new ByteArrayOutputStream();
    private final ByteOrder order;

    TinyTiff(ByteOrder order) {
        this.order = order;
    }

    /** One field of a directory. */
    record Field(
            int tag,
            int type,
            int count,
            @SuppressWarnings("ArrayRecordComponent") byte[] value) {}

    Field shorts(int tag, int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(order);
        Arrays.stream(values).forEach(v -> bytes.putShort((short) v));
        return new Field(tag, SHORT, values.length, bytes.array());
    }

    Field longs(int tag, int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(order);
        Arrays.stream(values).forEach(bytes::putInt);
        return new Field(tag, LONG, values.length, bytes.array());
    }

    Field rational(int tag, int over, int under) {
        return new Field(
                tag,
                RATIONAL,
                1,
                ByteBuffer.allocate(8).order(order).putInt(over).putInt(under).array());
    }

    Field text(int tag, String value) {
        byte[] bytes = (value + "\0").getBytes(StandardCharsets.US_ASCII);
        return new Field(tag, ASCII, bytes.length, bytes);
    }

    /** Adds bytes and returns their offset. */
    int add(byte[] bytes) {
        if (body.size() % 2 != 0) {
            body.write(0);
        }
        int at = HEADER + body.size();
        body.writeBytes(bytes);
        return at;
    }

    /** Adds a directory, preceded by its longer values, and returns its offset. */
    int directory(Field... fields) {
        Field[] sorted = fields.clone();
        Arrays.sort(sorted, Comparator.comparingInt(Field::tag));
        ByteBuffer directory = ByteBuffer.allocate(2 + 12 * sorted.length + 4).order(order);
        directory.putShort((short) sorted.length);
        for (Field field : sorted) {
            directory.putShort((short) field.tag());
            directory.putShort((short) field.type());
            directory.putInt(field.count());
            if (field.value().length > 4) {
                directory.putInt(add(field.value()));
            } else {
                directory.put(Arrays.copyOf(field.value(), 4));
            }
        }
        return add(directory.putInt(0).array());
    }

    /** The whole file, beginning with {@code magic}, with its first directory at {@code first}. */
    byte[] file(String magic, int first) {
        byte[] start = magic.getBytes(StandardCharsets.ISO_8859_1);
        return ByteBuffer.allocate(HEADER + body.size())
                .order(order)
                .put(start)
                .putInt(first)
                .put(body.toByteArray())
                .array();
    }
}
