package polewright.app.command;

import polewright.app.Workbench;
import polewright.night.NightState;

/** Whether to draw the zone. */
final class ZonePictureOption {
    void draw(Workbench workbench, Output output, NightState night) {}
}
