"""Files for machines that cut or draw."""
