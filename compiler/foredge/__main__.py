"""``python -m foredge`` is ``foredge``."""

from foredge.cli import main

if __name__ == "__main__":
    main()
