"""Relief parts, one a file: forms that stand on a board and are covered with clay."""
