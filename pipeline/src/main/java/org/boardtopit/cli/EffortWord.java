package org.boardtopit.cli;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.boardtopit.clips.Effort;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads an effort as the sheet spells it. */
final class EffortWord implements ITypeConverter<Effort> {

    @Override
    public Effort convert(String word) {
        return Arrays.stream(Effort.values())
                .filter(effort -> effort.label().equals(word))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("it must be one of "
                        + Arrays.stream(Effort.values()).map(Effort::label).collect(Collectors.joining(", "))
                        + ", was '"
                        + word + "'"));
    }
}
