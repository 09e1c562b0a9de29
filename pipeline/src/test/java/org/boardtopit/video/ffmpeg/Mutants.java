package org.boardtopit.video.ffmpeg;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Damaged copies of small clips of every container and codec that clubs bring. */
public final class Mutants {
    private Mutants() {}

    private static List<Path> seeds(Path folder) throws IOException {
        Path seeds = Files.createDirectories(folder.resolve("seeds"));
        List<Path> made = new ArrayList<>();
        made.add(DrawnClip.codedAs("libopenh264").addNumbered(12, 160, 96).write(seeds.resolve("h264.mp4")));
        made.add(DrawnClip.codedAs("mpeg4")
                .reorderedPictures(2)
                .displayMatrix(0, 1, -1, 0)
                .addNumbered(12, 160, 96)
                .write(seeds.resolve("mpeg4.mov")));
        made.add(DrawnClip.codedAs("libopenh264").addNumbered(12, 160, 96).write(seeds.resolve("h264.mkv")));
        made.add(DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .addNumbered(8, 160, 96)
                .write(seeds.resolve("mjpeg.avi")));
        made.add(DrawnClip.codedAs("prores_ks")
                .pixelFormat("yuv422p10")
                .addNumbered(4, 160, 96)
                .write(seeds.resolve("prores.mov")));
        made.add(DrawnClip.codedAs("libaom-av1").addNumbered(6, 160, 96).write(seeds.resolve("av1.mp4")));
        made.add(DrawnClip.codedAs("libvpx-vp9").addNumbered(6, 160, 96).write(seeds.resolve("vp9.webm")));
        for (String name : List.of("hevc.mp4", "phone-hevc-10bit-hlg-turned.mov", "camcorder-h264-50i.mts")) {
            try (InputStream in = Mutants.class.getResourceAsStream(name)) {
                Files.copy(in, seeds.resolve(name));
            }
            made.add(seeds.resolve(name));
        }
        return made;
    }

    /**
     * Every kind of damage to every seed in turn. The same number, the same mutants.
     *
     * @param folder for them; the seeds go into its folder seeds
     */
    public static List<Path> write(Path folder, int count) throws IOException {
        List<Path> seeds = seeds(folder);
        List<Mutant> kinds = List.of(Mutant.values());
        List<Path> made = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Path seed = seeds.get(i % seeds.size());
            Mutant kind = kinds.get((i / seeds.size() + i) % kinds.size());
            byte[] damaged = kind.of(Files.readAllBytes(seed), new Random(i));
            made.add(Files.write(folder.resolve(i + "-" + kind + "-" + seed.getFileName()), damaged));
        }
        return made;
    }
}
