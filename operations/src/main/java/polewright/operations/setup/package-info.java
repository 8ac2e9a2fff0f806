/** What a night starts from: its beginning, site, skyline and rig, entered or corrected. */
@NullMarked
package polewright.operations.setup;

import org.jspecify.annotations.NullMarked;
