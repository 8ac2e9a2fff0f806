package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.drawing.mount.ScrewToTurn;
import polewright.drawing.zone.ZoneScene;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;

class ZoneTextTest {
    private static final String WHOLE = """
                               up                       Facing the north celestial pole

                       acccccccccccccccc                a  Vega 120 s: stars trail
                      aa              aa                b  Saturn at 200×: leaves the
                      a               a                    field
                      a               a                 c  M 13 guided: corners trail
                     aa              aa
                     a               a                  F  the axis now
                     a               a                  A  best aim
                    aa              aa                  P  true pole
                    a       A       a                   1-2 where the axis was, in order
                    a               a                   :  1 sigma   .  2 sigma
                   aa              aa
                   a        P      a    ...::..
                   a               a  ..::F:: .
                  aa              aa  . :::::.
                  a               a   ......
                  a               a
               2  abbbbbbbbbbbbbbba

            west              down               east
                         |----------| 2′""";

    @Test
    void northernZone_withTheAxisOutside() {
        ZoneScene scene = ZoneScene.of(zone(), true)
                .withNow(AxisOffset.ofArcminutes(2.6, -0.6), new OffsetCovariance(0.16, 0.06, 0.09))
                .withPath(List.of(place(7, -4), place(-2.5, -2)));

        assertThat(String.join("\n", ZoneText.of(scene))).isEqualTo(WHOLE);
    }

    @Test
    void map_fitsATerminal_andUsesPortableCharacters() {
        for (ZoneScene scene : scenes()) {
            List<String> lines = ZoneText.of(scene);
            assertThat(lines).hasSizeLessThanOrEqualTo(ZoneText.ROWS);
            for (String line : lines) {
                assertThat(line.length()).as(line).isLessThanOrEqualTo(ZoneText.WIDTH);
                assertThat(line).matches("[ -~′″°×]*");
            }
            assertThat(Wrapping.wrapped(lines)).isEqualTo(lines);
        }
    }

    @Test
    void aspectRatio_isTrue_aDiscIsTwiceAsManyCharactersWideAsHigh() {
        List<String> lines = ZoneText.of(ZoneScene.of(DiscAllowance.VISUAL, true));
        int left = 99;
        int right = 0;
        int high = 0;
        for (String line : lines.subList(1, 20)) {
            String map = line.substring(0, Math.min(41, line.length()));
            left = map.indexOf('a') < 0 ? left : Math.min(left, map.indexOf('a'));
            right = Math.max(right, map.lastIndexOf('a'));
            high += map.indexOf('a') >= 0 ? 1 : 0;
        }

        assertThat(right - left).isEqualTo(2 * (high - 1));
    }

    @Test
    void scale_isTrue() {
        List<String> lines = ZoneText.of(ZoneScene.of(DiscAllowance.VISUAL, true));
        String scale = lines.get(lines.size() - 1);

        // The disc spans 10′ over 33 columns from edge to edge, so 5′ are 16.5 columns.
        assertThat(scale.strip()).isEqualTo("|" + "-".repeat(15) + "| 5′");
    }

    @Test
    void east_isOnTheLeft_facingTheSouthPole() {
        String north = directions(ZoneText.of(ZoneScene.of(zone(), true)));
        String south = directions(ZoneText.of(ZoneScene.of(zone(), false)));

        assertThat(north).matches("west +down +east");
        assertThat(south).matches("east +down +west");
    }

    @Test
    void southernMap_mirrorsTheNorthernOne() {
        List<String> north = ZoneText.of(ZoneScene.of(DiscAllowance.VISUAL, true)
                .withNow(AxisOffset.ofArcminutes(3, 2), new OffsetCovariance(0.01, 0, 0.01)));
        List<String> south = ZoneText.of(ZoneScene.of(DiscAllowance.VISUAL, false)
                .withNow(AxisOffset.ofArcminutes(3, 2), new OffsetCovariance(0.01, 0, 0.01)));

        assertThat(column(south, 'F')).isEqualTo(40 - column(north, 'F'));
        assertThat(column(north, 'F')).isGreaterThan(20);
    }

    @Test
    void distantAxis_isAtTheBorder_inItsDirection() {
        List<String> lines = ZoneText.of(ZoneScene.of(zone(), true)
                .withNow(AxisOffset.ofArcminutes(160, 80), new OffsetCovariance(400, 0, 400)));

        assertThat(column(lines, 'F')).isEqualTo(40);
        assertThat(String.join(" ", lines).replaceAll(" +", " ")).contains("F the axis now: off the map, 2.7°");
    }

    @Test
    void coincidentMarks_areListed() {
        List<String> lines = ZoneText.of(ZoneScene.of(DiscAllowance.VISUAL, true)
                .withNow(AxisOffset.NONE, new OffsetCovariance(0.001, 0, 0.001)));

        assertThat(lines)
                .anyMatch(line -> line.endsWith("F  the axis now, on the same spot"))
                .anyMatch(line -> line.endsWith("   as A"))
                .anyMatch(line -> line.endsWith("A  best aim, on the same spot as P"));
    }

    @Test
    void legsOfATurn_areOnSeparateLines() {
        Screw screw = Screw.rough(new ScrewGeometry.PushScrew(1.25, 200), ScrewSense.RIGHT);

        assertThat(LegWords.toTurn(screw, -1.5, 0.5, false))
                .isEqualTo(new ScrewToTurn(
                        ScrewSense.RIGHT,
                        -1.5,
                        0.5,
                        false,
                        List.of("2 turns counter-clockwise,", "then back 1/2 turn clockwise")));
        assertThat(LegWords.toTurn(screw, 1.75, 0, false).words()).containsExactly("1 3/4 turns clockwise");
    }

    private static List<ZoneScene> scenes() {
        return List.of(
                ZoneScene.of(DiscAllowance.VISUAL, true),
                ZoneScene.of(zone(), false)
                        .withNow(AxisOffset.ofArcminutes(1, 5), new OffsetCovariance(2, -1, 1))
                        .withPath(Collections.nCopies(20, place(1, 1)))
                        .withGoal(AxisOffset.ofArcminutes(0.5, 0.7)),
                ZoneScene.of(zone(), true)
                        .withNow(AxisOffset.ofArcminutes(-900, 5), new OffsetCovariance(90_000, 0, 90_000))
                        .withPath(List.of(place(0, 0)))
                        .withGoal(AxisOffset.ofArcminutes(-300, 7)));
    }

    private static ZoneScene.Place place(double east, double up) {
        return new ZoneScene.Place(AxisOffset.ofArcminutes(east, up), Optional.empty());
    }

    private static String directions(List<String> lines) {
        return lines.get(lines.size() - 2).substring(0, 41);
    }

    /** Of a mark on the map, not in the key. */
    private static int column(List<String> lines, char mark) {
        return lines.subList(1, 20).stream()
                .mapToInt(line -> line.substring(0, Math.min(41, line.length())).indexOf(mark))
                .max()
                .orElseThrow();
    }

    /**
     * 4′ wide and 6′ high, limited at the sides by one item, and at top and bottom by two others; the best aim is
     * slightly above the pole.
     */
    private static WorkZone zone() {
        AxisOffset[] corners = {
            AxisOffset.ofArcminutes(-2, -2),
            AxisOffset.ofArcminutes(1, -2),
            AxisOffset.ofArcminutes(2, 4),
            AxisOffset.ofArcminutes(-1, 4)
        };
        String[] items = {"Saturn at 200×", "Vega 120 s", "M 13 guided", "Vega 120 s"};
        LimitCause[] causes = {LimitCause.LEAVES_FIELD, LimitCause.DRIFT, LimitCause.CORNER, LimitCause.DRIFT};
        List<ZoneEdge> edges = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            AxisOffset along = corners[(i + 1) % 4].minus(corners[i]);
            for (int k = 0; k < 50; k++) {
                edges.add(new ZoneEdge(
                        share(corners[i], along, k / 50.0),
                        share(corners[i], along, (k + 1) / 50.0),
                        items[i],
                        causes[i]));
            }
        }
        VisualObservation look = new VisualObservation(
                "Vega 120 s",
                Angle.ofDegrees(1),
                Duration.ofMinutes(15),
                new VisualObservation.Finding.Centred(),
                SkyRegion.Above.THIRTY_DEGREES);
        return new WorkZone(
                new Work(List.of(look)), edges, AxisOffset.ofArcminutes(0, 1), Angle.ofArcminutes(1.5), "Vega 120 s");
    }

    private static AxisOffset share(AxisOffset from, AxisOffset along, double share) {
        return AxisOffset.ofArcminutes(
                from.east().arcminutes() + share * along.east().arcminutes(),
                from.up().arcminutes() + share * along.up().arcminutes());
    }
}
