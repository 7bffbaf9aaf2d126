"""Reading a spec: YAML with positions, measures with units, and reuse by ``extends``."""
