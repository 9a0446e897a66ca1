// The upper halves of the processor's vector registers.
#pragma once

namespace bolthole {

/// Tells the processor that the upper halves of its vector registers hold nothing. What others leave in them,
/// as Qt does when it fills a picture, each of our 128-bit instructions has to keep and to wait for: a trace
/// then takes four times as long. Called where computing begins and before an event is dealt with; takes a
/// few cycles. Does nothing where there are no such registers. Source: Intel 64 and IA-32 Architectures
/// Optimization Reference Manual, "Mixing AVX Code with SSE Code" (from memory); that nobody may rely on
/// these halves across a call: System V Application Binary Interface, AMD64 supplement, register usage (from
/// memory).
void clearUpperVectors();

}  // namespace bolthole
