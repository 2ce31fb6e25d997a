//! What a vehicle network says of a gearbox: bytes in, quantities with a status out.
