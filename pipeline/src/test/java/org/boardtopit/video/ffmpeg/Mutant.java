package org.boardtopit.video.ffmpeg;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Ways in which a file comes out of a card, a cable or a messenger otherwise than it went in. The same seed, the same damage. */
enum Mutant {
    TRUNCATED {
        @Override
        byte[] of(byte[] file, Random random) {
            return Arrays.copyOf(file, 1 + random.nextInt(file.length - 1));
        }
    },
    BITS_FLIPPED {
        @Override
        byte[] of(byte[] file, Random random) {
            byte[] out = file.clone();
            int flips = 1 << random.nextInt(9);
            for (int i = 0; i < flips; i++) {
                out[random.nextInt(out.length)] ^= (byte) (1 << random.nextInt(8));
            }
            return out;
        }
    },
    HEAD_BITS_FLIPPED {
        @Override
        byte[] of(byte[] file, Random random) {
            byte[] out = file.clone();
            for (int i = 0; i < 8; i++) {
                out[random.nextInt(Math.min(1024, out.length))] ^= (byte) (1 << random.nextInt(8));
            }
            return out;
        }
    },
    RUN_OVERWRITTEN {
        @Override
        byte[] of(byte[] file, Random random) {
            byte[] out = file.clone();
            int at = random.nextInt(out.length);
            byte[] noise = new byte[Math.min(out.length - at, 1 + random.nextInt(2000))];
            if (random.nextBoolean()) {
                random.nextBytes(noise);
            }
            System.arraycopy(noise, 0, out, at, noise.length);
            return out;
        }
    },
    /** Lengths and counts are numbers of four bytes. */
    NUMBER_MADE_HUGE {
        @Override
        byte[] of(byte[] file, Random random) {
            byte[] out = file.clone();
            int[] values = {-1, Integer.MAX_VALUE, Integer.MIN_VALUE, 0, 0x00ffffff, 0x7fff0000};
            for (int i = 0; i < 3; i++) {
                ByteBuffer.wrap(out).putInt(random.nextInt(out.length - 4), values[random.nextInt(values.length)]);
            }
            return out;
        }
    },
    BOXES_SWAPPED {
        @Override
        byte[] of(byte[] file, Random random) {
            List<int[]> boxes = boxes(file);
            if (boxes.size() < 2) {
                return BITS_FLIPPED.of(file, random);
            }
            int[] a = boxes.get(random.nextInt(boxes.size() - 1));
            List<int[]> after = boxes.stream().filter(b -> b[0] >= a[0] + a[1]).toList();
            if (after.isEmpty()) {
                return TRUNCATED.of(file, random);
            }
            int[] b = after.get(random.nextInt(after.size()));
            return joined(
                    Arrays.copyOf(file, a[0]),
                    Arrays.copyOfRange(file, b[0], b[0] + b[1]),
                    Arrays.copyOfRange(file, a[0] + a[1], b[0]),
                    Arrays.copyOfRange(file, a[0], a[0] + a[1]),
                    Arrays.copyOfRange(file, b[0] + b[1], file.length));
        }
    },
    BOX_DOUBLED {
        @Override
        byte[] of(byte[] file, Random random) {
            List<int[]> boxes = boxes(file);
            if (boxes.isEmpty()) {
                return RUN_OVERWRITTEN.of(file, random);
            }
            int[] a = boxes.get(random.nextInt(boxes.size()));
            return joined(
                    Arrays.copyOf(file, a[0] + a[1]),
                    Arrays.copyOfRange(file, a[0], a[0] + a[1]),
                    Arrays.copyOfRange(file, a[0] + a[1], file.length));
        }
    },
    PIECE_LEFT_OUT {
        @Override
        byte[] of(byte[] file, Random random) {
            int from = random.nextInt(file.length);
            int to = from + random.nextInt(file.length - from);
            return joined(Arrays.copyOf(file, from), Arrays.copyOfRange(file, to, file.length));
        }
    };

    /** A damaged copy, perhaps empty. */
    abstract byte[] of(byte[] file, Random random);

    /** Offset and length of the boxes of an MP4 or QuickTime file (ISO/IEC 14496-12), those within boxes too. */
    private static List<int[]> boxes(byte[] file) {
        List<int[]> boxes = new ArrayList<>();
        addBoxes(ByteBuffer.wrap(file), 0, file.length, boxes);
        return boxes;
    }

    private static void addBoxes(ByteBuffer file, int from, int to, List<int[]> boxes) {
        int at = from;
        while (at + 8 <= to) {
            int length = file.getInt(at);
            if (length < 8 || length > to - at) {
                return;
            }
            boxes.add(new int[] {at, length});
            int name = file.getInt(at + 4);
            if (List.of(0x6d6f6f76, 0x7472616b, 0x6d646961, 0x6d696e66, 0x7374626c)
                    .contains(name)) { // moov ... stbl
                addBoxes(file, at + 8, at + length, boxes);
            }
            at += length;
        }
    }

    private static byte[] joined(byte[]... pieces) {
        ByteBuffer all = ByteBuffer.allocate(
                Arrays.stream(pieces).mapToInt(p -> p.length).sum());
        for (byte[] piece : pieces) {
            all.put(piece);
        }
        return all.array();
    }
}
