package polewright.image.match;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import polewright.sky.atlas.SkyCells;
import polewright.sky.atlas.StarAtlas;

/** An invented sky of few stars, each fainter than the previous one. */
final class SmallAtlas {
    private SmallAtlas() {}

    static StarAtlas of(int stars, long seed) {
        Random dice = new Random(seed);
        ByteBuffer bytes = ByteBuffer.allocate(20 + stars * 7 * Double.BYTES + SkyCells.count() * Short.BYTES);
        bytes.put(StarAtlas.MAGIC.getBytes(StandardCharsets.US_ASCII));
        bytes.putInt(stars).putInt(SkyCells.count()).putInt(0);
        for (int i = 0; i < stars; i++) {
            bytes.putDouble(360 * dice.nextDouble())
                    .putDouble(Math.toDegrees(Math.asin(2 * dice.nextDouble() - 1)))
                    .putDouble(0)
                    .putDouble(0)
                    .putDouble(0)
                    .putDouble(0)
                    .putDouble(0.01 * i);
        }
        try {
            return StarAtlas.read(new ByteArrayInputStream(bytes.array()));
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }
}
