package polewright.drawing.zone;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.LimitCause;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/** Sample scenes for the pictures. */
final class SampleScenes {
    private SampleScenes() {}

    static Map<String, ZoneScene> all() {
        Map<String, ZoneScene> scenes = new LinkedHashMap<>();
        scenes.put("disc alone", ZoneScene.of(DiscAllowance.VISUAL, true));
        scenes.put(
                "disc, axis just outside",
                ZoneScene.of(DiscAllowance.VISUAL, true)
                        .withNow(AxisOffset.ofArcminutes(6, -3), new OffsetCovariance(2, 0.5, 1))
                        .withGoal(AxisOffset.ofArcminutes(0.5, 0.3)));
        scenes.put("three items", threeItems(true));
        scenes.put("three items, south", threeItems(false));
        scenes.put(
                "three items, tiny sigma",
                ZoneScene.of(SampleZones.threeItems(), true)
                        .withNow(AxisOffset.ofArcminutes(0.6, 0.9), new OffsetCovariance(0.001, 0, 0.001)));
        scenes.put(
                "thin",
                ZoneScene.of(SampleZones.thin(), true)
                        .withNow(AxisOffset.ofArcminutes(3, -2), new OffsetCovariance(1, 0.4, 0.6)));
        scenes.put("far", far(true));
        scenes.put("far, south", far(false));
        scenes.put(
                "vague",
                ZoneScene.of(SampleZones.threeItems(), true)
                        .withNow(AxisOffset.ofArcminutes(30, -60), new OffsetCovariance(200_000, 0, 200_000)));
        scenes.put(
                "many items",
                ZoneScene.of(SampleZones.manyItems(), false)
                        .withNow(AxisOffset.ofArcminutes(2, -2), new OffsetCovariance(1, -0.6, 1))
                        .withPath(List.of(place(8, 3), place(5, -4))));
        scenes.put("pole a little below the aim, south", poleBelowAim(false, 0.9));
        scenes.put("pole at the aim", poleBelowAim(true, 0.02));
        scenes.put(
                "axis on the aim",
                poleBelowAim(true, 0.9).withNow(AxisOffset.ofArcminutes(0, 0.92), new OffsetCovariance(0.04, 0, 0.04)));
        scenes.put(
                "far first fix",
                poleBelowAim(false, 0.9)
                        .withNow(AxisOffset.ofArcminutes(1.2, 0.2), new OffsetCovariance(0.1, 0, 0.1))
                        .withPath(List.of(place(40, -30), place(6, 2)))
                        .withGoal(AxisOffset.ofArcminutes(0, 0.9)));
        return scenes;
    }

    /** A zone around an aim that refraction lifts above the pole. */
    static ZoneScene poleBelowAim(boolean northern, double arcmin) {
        AxisOffset aim = AxisOffset.ofArcminutes(0, arcmin);
        return ZoneScene.of(
                        SampleZones.zone(
                                aim,
                                SampleZones.Rule.ellipse("tarantula", LimitCause.DRIFT, 100, 6, 4),
                                SampleZones.Rule.straight("omega cen", LimitCause.CORNER, 20, 4.5)),
                        northern)
                .withNow(AxisOffset.ofArcminutes(-7, 3), new OffsetCovariance(0.6, 0.1, 0.4))
                .withPath(List.of(place(10, -6)))
                .withGoal(aim);
    }

    static ZoneScene threeItems(boolean northern) {
        return ZoneScene.of(SampleZones.threeItems(), northern)
                .withNow(AxisOffset.ofArcminutes(2.6, -0.6), new OffsetCovariance(0.16, 0.06, 0.09))
                .withPath(List.of(place(7, -4), place(-2.5, -2), place(1.5, -3)))
                .withGoal(AxisOffset.ofArcminutes(0.4, 1.2));
    }

    static ZoneScene far(boolean northern) {
        return ZoneScene.of(SampleZones.threeItems(), northern)
                .withNow(AxisOffset.ofArcminutes(160, 80), new OffsetCovariance(400, 100, 250))
                .withPath(List.of(place(250, 20)))
                .withGoal(AxisOffset.ofArcminutes(4, 1));
    }

    static ZoneScene.Place place(double east, double up) {
        return new ZoneScene.Place(AxisOffset.ofArcminutes(east, up), Optional.empty());
    }
}
