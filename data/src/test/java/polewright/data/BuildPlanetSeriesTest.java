package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;

class BuildPlanetSeriesTest {
    private static JsonNode series() throws JsonProcessingException {
        return new ObjectMapper().readTree("""
                {"L": {"0": [[0.5, 1, 2], [4e-8, 3, 4], [2e-8, 5, 6]], "1": [[-4e-7, 7, 8], [2e-7, 9, 10]]},
                 "B": {"0": [[-3e-8, 11, 12]]},
                 "R": {"0": [[5, 13, 14], [1.4e-7, 15, 16]]}}
                """);
    }

    @Test
    void keepsTermsThatMatterWithinACenturyOf2000() throws JsonProcessingException {
        assertThat(BuildPlanetSeries.table("invented", series(), 3e-8).lines().filter(line -> !line.startsWith("#")))
                .containsExactly(
                        "L 0 0.5 1.0 2.0",
                        "L 0 4.0E-8 3.0 4.0",
                        "L 1 -4.0E-7 7.0 8.0",
                        "B 0 -3.0E-8 11.0 12.0",
                        "R 0 5.0 13.0 14.0");
    }

    @Test
    void keepsEverythingWhenAskedTo() throws JsonProcessingException {
        assertThat(BuildPlanetSeries.table("invented", series(), 0).lines().filter(line -> !line.startsWith("#")))
                .hasSize(8);
    }

    @Test
    void table_namesItsSource() throws JsonProcessingException {
        assertThat(BuildPlanetSeries.table("saturn", series(), 3e-8))
                .startsWith(
                        "# VSOP87B, saturn, terms of 3.0E-8 and more (Bretagnon and Francou 1988; from npm astronomia"
                                + " 4.2.0, MIT)\n");
    }
}
