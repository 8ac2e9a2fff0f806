package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;
import polewright.sky.place.CatalogueStar;

class BuildStarAtlasTest {
    @TempDir
    Path folder;

    @Test
    void builtAtlas_isReadByTheReader() throws IOException {
        CatalogueStar place =
                new CatalogueStar(Angle.ofDegrees(37.95), Angle.ofDegrees(89.26), 44.48, -11.85, 7.54, -16);
        CellStars cells = new CellStars();
        cells.add(StarPlaces.unit(37.0, 89.3), 11.0);
        cells.add(StarPlaces.unit(37.0, 89.2), 8.0);
        cells.add(StarPlaces.unit(0.0, -90), 9.5);
        Path file = folder.resolve("atlas.bin");
        BuildStarAtlas.write(file, List.of(new NamedStar(List.of(), List.of("alp UMi"), place, 2.02, true)), cells);

        try (InputStream in = Files.newInputStream(file)) {
            StarAtlas atlas = StarAtlas.read(in);
            assertThat(atlas.size()).isEqualTo(4);
            assertThat(atlas.star(0).place()).isEqualTo(place);
            StarField north = atlas.starsWithin(Angle.ZERO, Angle.QUARTER_TURN, Angle.ofDegrees(2), 20);
            assertThat(List.of(north.magnitude(1), north.magnitude(2))).containsExactly(8.0, 11.0);
            StarField south = atlas.starsWithin(Angle.HALF_TURN, Angle.QUARTER_TURN.negated(), Angle.ofDegrees(1), 20);
            assertThat(south.size()).isEqualTo(1);
            assertThat(south.declination(0).degrees()).isLessThan(-89.99);
        }
    }
}
