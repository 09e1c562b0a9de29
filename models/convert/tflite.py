"""Reads the parts of a TensorFlow Lite file that the converter needs: the operators of its graph, their settings and the weights.

A .tflite file is a FlatBuffer. Its layout is public (schema.fbs of TensorFlow Lite, version 3); the field numbers below are the positions of
the fields in that schema. Only one graph per file, and only the operators that the two pose networks use, are understood: anything else is an
error, never a guess.
"""
from __future__ import annotations

import struct
from dataclasses import dataclass
from pathlib import Path
from typing import List, Optional, Tuple

import numpy as np

OPERATORS = {
    0: "ADD",
    2: "CONCATENATION",
    3: "CONV_2D",
    4: "DEPTHWISE_CONV_2D",
    5: "DEPTH_TO_SPACE",
    6: "DEQUANTIZE",
    14: "LOGISTIC",
    17: "MAX_POOL_2D",
    22: "RESHAPE",
    23: "RESIZE_BILINEAR",
    34: "PAD",
    124: "DENSIFY",
}
TYPES = {0: np.dtype("<f4"), 1: np.dtype("<f2"), 2: np.dtype("<i4"), 3: np.dtype("u1")}
# Index types of a sparse dimension: SparseIndexVector union of the schema.
SPARSE_INDEX_TYPES = {1: np.dtype("<i4"), 2: np.dtype("<u2"), 3: np.dtype("u1")}


class Table:
    """One FlatBuffer table: fields are found by number, a missing field has its default."""

    def __init__(self, file: bytes, position: int):
        self.file = file
        self.position = position
        self.vtable = position - struct.unpack_from("<i", file, position)[0]
        self.vtable_bytes = struct.unpack_from("<H", file, self.vtable)[0]

    def _field(self, number: int) -> Optional[int]:
        entry = 4 + 2 * number
        if entry >= self.vtable_bytes:
            return None
        offset = struct.unpack_from("<H", self.file, self.vtable + entry)[0]
        return self.position + offset if offset else None

    def _target(self, at: int) -> int:
        return at + struct.unpack_from("<I", self.file, at)[0]

    def _vector(self, number: int) -> Tuple[int, int]:
        at = self._field(number)
        if at is None:
            return 0, 0
        start = self._target(at)
        return start + 4, struct.unpack_from("<I", self.file, start)[0]

    def scalar(self, number: int, code: str, default=0):
        """A number; code is the letter of the struct module."""
        at = self._field(number)
        return default if at is None else struct.unpack_from("<" + code, self.file, at)[0]

    def table(self, number: int) -> Optional["Table"]:
        at = self._field(number)
        return None if at is None else Table(self.file, self._target(at))

    def tables(self, number: int) -> List["Table"]:
        start, count = self._vector(number)
        return [Table(self.file, self._target(start + 4 * k)) for k in range(count)]

    def array(self, number: int, dtype) -> np.ndarray:
        start, count = self._vector(number)
        return np.frombuffer(self.file, dtype, count, start) if count else np.zeros(0, dtype)

    def ints(self, number: int) -> List[int]:
        return [int(v) for v in self.array(number, np.dtype("<i4"))]

    def vector_position(self, number: int) -> int:
        """Place in the file of the first element."""
        return self._vector(number)[0]


@dataclass(frozen=True)
class Tensor:
    shape: Tuple[int, ...]
    dtype: np.dtype
    data: Optional[np.ndarray]  # the constant, None for a tensor that is computed
    position: int  # place of the constant in the file, bytes; 0 for none


@dataclass(frozen=True)
class Operator:
    kind: str
    inputs: List[int]  # places in Graph.tensors, -1 for an input that is left out
    outputs: List[int]
    options: Optional[Table]


@dataclass(frozen=True)
class Graph:
    file: bytes
    tensors: List[Tensor]
    operators: List[Operator]  # in order of execution
    inputs: List[int]
    outputs: List[int]

    def needed_for(self, outputs: List[int]) -> List[Operator]:
        """The operators that the outputs depend on, in order of execution."""
        wanted, kept = set(outputs), []
        for operator in reversed(self.operators):
            if wanted.intersection(operator.outputs):
                kept.append(operator)
                wanted.update(operator.inputs)
        return kept[::-1]

    def output_with_shape(self, shape: Tuple[int, ...]) -> int:
        found = [t for t in self.outputs if self.tensors[t].shape == shape]
        if len(found) != 1:
            raise ValueError(f"the graph should have one output of shape {shape}, has {len(found)}")
        return found[0]


def read(path: Path) -> Graph:
    """Reads a .tflite file."""
    file = Path(path).read_bytes()
    if file[4:8] != b"TFL3":
        raise ValueError(f"{path}: not a TensorFlow Lite file of version 3 (TFL3 expected at byte 4)")
    model = Table(file, struct.unpack_from("<I", file, 0)[0])
    kinds = [_operator_kind(code) for code in model.tables(1)]
    buffers = model.tables(4)
    graphs = model.tables(2)
    if len(graphs) != 1:
        raise ValueError(f"{path}: one graph expected, found {len(graphs)}")
    graph = graphs[0]
    return Graph(
        file=file,
        tensors=[_tensor(t, buffers) for t in graph.tables(0)],
        operators=[
            Operator(kinds[o.scalar(0, "I")], o.ints(1), o.ints(2), o.table(4)) for o in graph.tables(3)
        ],
        inputs=graph.ints(1),
        outputs=graph.ints(2),
    )


def _operator_kind(code: Table) -> str:
    # Old files keep the number in a byte (field 0), newer ones in an int (field 3); the larger one counts.
    number = max(code.scalar(0, "b"), code.scalar(3, "i"))
    if number not in OPERATORS:
        raise ValueError(f"operator {number} of the TensorFlow Lite schema is not supported")
    return OPERATORS[number]


def _tensor(table: Table, buffers: List[Table]) -> Tensor:
    shape, dtype = tuple(table.ints(0)), TYPES[table.scalar(1, "b")]
    buffer = buffers[table.scalar(2, "I")]
    raw = buffer.array(0, np.dtype("u1"))
    if not raw.size:
        return Tensor(shape, dtype, None, 0)
    sparsity = table.table(6)
    values = raw.view(dtype)
    data = values.reshape(shape) if sparsity is None else _dense(values, shape, sparsity)
    return Tensor(shape, dtype, data, buffer.vector_position(0))


def _dense(values: np.ndarray, shape: Tuple[int, ...], sparsity: Table) -> np.ndarray:
    """Unpacks a sparse constant (SparsityParameters of the schema).

    The dimensions are traversed in the given order; those beyond the tensor's rank are the inner dimensions of blocks. A dense dimension
    counts through; a sparse one lists, for every position of the dimension before it, a segment of the indices that are present.
    """
    order, block_map, dimensions = sparsity.ints(0), sparsity.ints(1), sparsity.tables(2)
    rank = len(shape)
    levels = [_sparse_level(d) for d in dimensions]
    block = {block_map[order[k] - rank]: levels[k][1] for k in range(rank, len(order))}
    dense = np.zeros(shape, values.dtype)
    seen = 0

    def visit(level: int, index: List[int], position: int) -> None:
        nonlocal seen
        if level == len(order):
            place = [0] * rank
            for dimension, value in zip(order, index):
                if dimension < rank:
                    place[dimension] += value * block.get(dimension, 1)
                else:
                    place[block_map[dimension - rank]] += value
            dense[tuple(place)] = values[position]
            seen += 1
            return
        sparse, size, segments, indices = levels[level]
        if not sparse:
            for k in range(size):
                visit(level + 1, index + [k], position * size + k)
        else:
            for k in range(segments[position], segments[position + 1]):
                visit(level + 1, index + [int(indices[k])], k)

    visit(0, [], 0)
    if seen != len(values):
        raise ValueError(f"sparse constant of shape {shape}: {len(values)} values stored, {seen} placed")
    return dense


def _sparse_level(dimension: Table):
    """(is sparse, size of a dense dimension, segments, indices) of a DimensionMetadata table."""
    if dimension.scalar(0, "b") == 0:
        return False, dimension.scalar(1, "i"), None, None
    segments = dimension.table(3).array(0, SPARSE_INDEX_TYPES[dimension.scalar(2, "B")])
    indices = dimension.table(5).array(0, SPARSE_INDEX_TYPES[dimension.scalar(4, "B")])
    return True, 0, segments.astype(np.int64), indices.astype(np.int64)
