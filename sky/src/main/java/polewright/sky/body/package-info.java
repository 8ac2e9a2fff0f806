/** Sun, Moon and planets. */
@NullMarked
package polewright.sky.body;

import org.jspecify.annotations.NullMarked;
