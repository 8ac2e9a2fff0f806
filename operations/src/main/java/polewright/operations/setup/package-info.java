/** The frame of a night: its beginning, site, skyline and rig, entered or corrected. */
@NullMarked
package polewright.operations.setup;

import org.jspecify.annotations.NullMarked;
